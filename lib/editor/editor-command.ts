/**
 * What the keyboard can ask of a view that has the focus: records of name, label, keys, effect and undo policy.
 * The shortcuts panel is made from them, so it cannot tell of a key that does not work.
 */
import type { Viewport } from "@/lib/editor/camera";
import type { EditorMark } from "@/lib/editor/drawn-mark";
import type { EditorAction } from "@/lib/editor/editor-action";
import type { EditorState } from "@/lib/editor/editor-state";
import type { View } from "@/lib/gem/point";

export type EditorMode = "bench" | "reference" | "debrief";

/** What a command on the selected mark acts on: no view is needed for it. */
export interface MarkCommandContext {
  readonly state: EditorState<EditorMark>;
  readonly mode: EditorMode;
}

/** What a command acts on. */
export interface CommandContext extends MarkCommandContext {
  readonly view: View;
  readonly viewport: Viewport;
}

/** How a command stands to undo: it makes an entry, walks along the entries, or leaves them alone. */
export type UndoPolicy = "makes-entry" | "walks-entries" | "leaves-alone";

export interface EditorCommand {
  readonly name: string;
  readonly label: string;
  /** Commands with the same family are told of in one row of the panel, under this label. */
  readonly family?: string;
  readonly group: "Draw" | "Marks" | "Points" | "View";
  /** Keys as `KeyboardEvent.key`, lower case, with `mod+`, `shift+`, `alt+` before them in this order. */
  readonly keys: readonly string[];
  readonly undo: UndoPolicy;
  /** True for the arrow keys, which go on with a run of moves. */
  readonly isNudge?: true;
  /** In which modes it is there; in all when not given. */
  readonly modes?: readonly EditorMode[];
  /** The actions to take; none where there is nothing to act on. */
  readonly effect: (context: CommandContext) => readonly EditorAction<EditorMark>[];
}

/** A command that takes the selected mark alone, and so works wherever the focus is in the editor. */
export interface MarkCommand extends EditorCommand {
  readonly effect: (context: MarkCommandContext) => readonly EditorAction<EditorMark>[];
}

/** The modes in which marks are made and changed. */
export const EDITING_MODES: readonly EditorMode[] = ["bench", "reference"];

/** The ways of the arrow keys, y up. */
export const ARROW_WAYS = {
  left: [-1, 0],
  right: [1, 0],
  up: [0, 1],
  down: [0, -1],
} as const satisfies Readonly<Record<string, readonly [number, number]>>;
export type ArrowWay = keyof typeof ARROW_WAYS;
export const ARROWS = Object.keys(ARROW_WAYS) as ArrowWay[];

/** A key press as a keyboard event tells it. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** The name of a key press as commands list it: `mod+shift+z`. Shift is part of a printed sign, not named with it. */
export function toKeyName({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyPress): string {
  const lower = key.toLowerCase();
  const isSign = lower.length === 1 && !/[a-z]/.test(lower);
  const mod = ctrlKey || metaKey ? "mod+" : "";
  return `${mod}${shiftKey && !isSign ? "shift+" : ""}${altKey ? "alt+" : ""}${lower}`;
}
