"use client";

import { Kbd, Modal } from "@mantine/core";
import { memo } from "react";
import classes from "@/components/plot-editor/shortcuts-panel.module.css";
import type { EditorCommand, EditorMode } from "@/lib/editor/editor-command";
import { EDITOR_COMMANDS } from "@/lib/editor/editor-commands";

interface ShortcutsPanelProps {
  readonly mode: EditorMode;
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

const KEY_SIGNS: Readonly<Record<string, string>> = {
  mod: "Ctrl",
  shift: "Shift",
  alt: "Alt",
  arrowleft: "←",
  arrowright: "→",
  arrowup: "↑",
  arrowdown: "↓",
  enter: "Enter",
  escape: "Esc",
  delete: "Del",
  backspace: "Backspace",
  insert: "Ins",
};
const GROUPS: readonly EditorCommand["group"][] = ["Draw", "Marks", "Points", "View"];

function Keys({ keys }: { readonly keys: string }) {
  const parts = keys === "+" ? ["+"] : keys.split("+");
  return (
    <span className={classes.keys}>
      {parts.map((part) => (
        <Kbd key={part} size="sm">
          {KEY_SIGNS[part] ?? part.toUpperCase()}
        </Kbd>
      ))}
    </span>
  );
}

/** One row for each command, or for each family of them with all its keys. */
function listRows(commands: readonly EditorCommand[]): { label: string; keys: readonly string[] }[] {
  const rows = new Map<string, string[]>();
  for (const { label, family = label, keys } of commands) {
    rows.set(family, [...(rows.get(family) ?? []), ...keys]);
  }
  return [...rows].map(([label, keys]) => ({ label, keys }));
}

/** All keys that a view understands when it has the focus. */
export const ShortcutsPanel = memo(function ShortcutsPanel({ mode, isOpen, onClose }: ShortcutsPanelProps) {
  const commands = EDITOR_COMMANDS.filter(({ modes }) => modes?.includes(mode) ?? true);
  return (
    <Modal
      opened={isOpen}
      onClose={onClose}
      title="Keyboard"
      size="xl"
      closeButtonProps={{ "aria-label": "Close" }}
    >
      <p className={classes.intro}>
        These work while a view has the focus. With the space bar or the middle button held, dragging moves
        the view; the wheel zooms.
      </p>
      <div className={classes.groups}>
        {GROUPS.map((group) => {
          const ofGroup = commands.filter((command) => command.group === group);
          return ofGroup.length === 0 ? null : (
            <section key={group}>
              <h2>{group}</h2>
              <dl className={classes.list}>
                {listRows(ofGroup).map(({ label, keys }) => (
                  <div key={label}>
                    <dt>{label}</dt>
                    <dd>
                      {keys.map((one) => (
                        <Keys key={one} keys={one} />
                      ))}
                    </dd>
                  </div>
                ))}
              </dl>
            </section>
          );
        })}
      </div>
    </Modal>
  );
});
