/** Runs a keyboard command on an open editor. */
import type { Viewport } from "@/lib/editor/camera";
import type { EditorMark } from "@/lib/editor/drawn-mark";
import type { EditorCommand, EditorMode } from "@/lib/editor/editor-command";
import type { EditorStore } from "@/lib/editor/editor-store";
import type { View } from "@/lib/gem/point";

/** The view that has the focus. */
export interface CommandPlace {
  readonly view: View;
  readonly viewport: Viewport;
  readonly mode: EditorMode;
}

/**
 * Takes the command's actions one after the other. A run of arrow keys is settled first unless the command goes on
 * with it, so that a command always sees the marks as they stand (SPEC 3.11).
 */
export function runCommand(
  editor: EditorStore<EditorMark>,
  command: EditorCommand,
  place: CommandPlace,
): void {
  const isNudging = editor.getState().gesture?.kind === "nudging";
  if (isNudging && !command.isNudge && command.name !== "cancel") editor.dispatch({ kind: "settle" });
  for (const action of command.effect({ state: editor.getState(), ...place })) editor.dispatch(action);
}
