/** All commands of the keyboard (SPEC.md 7). */
import { DRAW_COMMANDS } from "@/lib/editor/draw-commands";
import {
  type EditorCommand,
  type EditorMode,
  type KeyPress,
  type MarkCommand,
  toKeyName,
} from "@/lib/editor/editor-command";
import { KNOWLEDGE_COMMANDS, MARK_COMMANDS } from "@/lib/editor/mark-commands";
import { VIEW_COMMANDS } from "@/lib/editor/view-commands";

/** All commands, in the order of the shortcuts panel. */
export const EDITOR_COMMANDS: readonly EditorCommand[] = [
  ...DRAW_COMMANDS,
  ...MARK_COMMANDS,
  ...VIEW_COMMANDS,
];

function findAmong<C extends EditorCommand>(
  commands: readonly C[],
  press: KeyPress,
  mode: EditorMode,
): C | null {
  const name = toKeyName(press);
  return commands.find(({ keys, modes }) => keys.includes(name) && (modes?.includes(mode) ?? true)) ?? null;
}

/** The command for a key press in a mode, or null. */
export function findCommand(press: KeyPress, mode: EditorMode): EditorCommand | null {
  return findAmong(EDITOR_COMMANDS, press, mode);
}

/** The same among those that take the selected mark alone and need no view. */
export function findMarkCommand(press: KeyPress, mode: EditorMode): MarkCommand | null {
  return findAmong(KNOWLEDGE_COMMANDS, press, mode);
}
