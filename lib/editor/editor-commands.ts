/** All commands of the keyboard (SPEC.md 7). */
import { DRAW_COMMANDS } from "@/lib/editor/draw-commands";
import { type EditorCommand, type EditorMode, type KeyPress, toKeyName } from "@/lib/editor/editor-command";
import { MARK_COMMANDS } from "@/lib/editor/mark-commands";
import { VIEW_COMMANDS } from "@/lib/editor/view-commands";

/** All commands, in the order of the shortcuts panel. */
export const EDITOR_COMMANDS: readonly EditorCommand[] = [
  ...DRAW_COMMANDS,
  ...MARK_COMMANDS,
  ...VIEW_COMMANDS,
];

/** The command for a key press in a mode, or null. */
export function findCommand(press: KeyPress, mode: EditorMode): EditorCommand | null {
  const name = toKeyName(press);
  return (
    EDITOR_COMMANDS.find(({ keys, modes }) => keys.includes(name) && (modes?.includes(mode) ?? true)) ?? null
  );
}
