"use client";

import { ActionIcon, Tooltip, UnstyledButton } from "@mantine/core";
import { Keyboard, Redo2, Undo2 } from "lucide-react";
import { memo, type ReactNode } from "react";
import { MarkSign } from "@/components/plot-editor/mark-sign";
import { SubjectPicker } from "@/components/plot-editor/subject-picker";
import {
  type CharacteristicsByName,
  toStyleName,
  toSubjectKey,
  toSubjectLabel,
} from "@/components/plot-editor/subject-words";
import classes from "@/components/plot-editor/tool-bar.module.css";
import { ToolSign } from "@/components/plot-editor/tool-signs";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import { isSameSubject } from "@/lib/editor/drawn-mark";
import type { EditorMode } from "@/lib/editor/editor-command";
import { EDITOR_COMMANDS } from "@/lib/editor/editor-commands";
import { TOOLS, type Tool } from "@/lib/editor/editor-state";
import type { Notation } from "@/lib/plot/notation";

const TOOL_LABELS: Readonly<Record<Tool, string>> = {
  select: "Select",
  dot: "Dot",
  stroke: "Stroke",
  outline: "Outline",
  pan: "Pan",
};

interface ToolBarProps {
  readonly editor: Editor;
  readonly mode: EditorMode;
  readonly readOnly: boolean;
  readonly characteristics: CharacteristicsByName;
  readonly notation: Notation;
  readonly isPickerOpen: boolean;
  readonly onPickerOpen: (isOpen: boolean) => void;
  readonly onShortcuts: () => void;
  readonly end: ReactNode;
}

function findKey(name: string): string {
  return EDITOR_COMMANDS.find((command) => command.name === name)?.keys[0]?.toUpperCase() ?? "";
}

function ToolButtons({ editor, readOnly }: Pick<ToolBarProps, "editor" | "readOnly">) {
  const tool = useEditorState(editor, (state) => state.tool);
  const tools = readOnly ? TOOLS.filter((one) => one === "select" || one === "pan") : TOOLS;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a row in every browser.
    <div className={classes.tools} role="group" aria-label="Tools">
      {tools.map((one) => (
        <Tooltip key={one} label={`${TOOL_LABELS[one]} (${findKey(`tool-${one}`)})`}>
          <UnstyledButton
            className={classes.tool}
            aria-pressed={tool === one}
            onClick={() => editor.dispatch({ kind: "choose-tool", tool: one })}
          >
            <ToolSign tool={one} />
            <span className={classes.toolLabel}>{TOOL_LABELS[one]}</span>
          </UnstyledButton>
        </Tooltip>
      ))}
    </div>
  );
}

function RecentSubjects({ editor, characteristics, notation }: ToolBarProps) {
  const recent = useEditorState(editor, (state) => state.recent);
  const subject = useEditorState(editor, (state) => state.subject);
  const others = recent.filter((one) => subject === null || !isSameSubject(one, subject)).slice(0, 3);
  if (others.length === 0) return null;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a row of buttons, not a set of form fields.
    <div className={classes.recent} role="group" aria-label="Last used">
      {others.map((one) => (
        <UnstyledButton
          key={toSubjectKey(one)}
          className={classes.chip}
          onClick={() => editor.dispatch({ kind: "choose-subject", subject: one })}
        >
          <MarkSign style={notation[toStyleName(one, characteristics)]} />
          <span>{toSubjectLabel(one, characteristics)}</span>
        </UnstyledButton>
      ))}
    </div>
  );
}

function UndoButtons({ editor }: Pick<ToolBarProps, "editor">) {
  const canUndo = useEditorState(editor, (state) => state.history.done.length > 0);
  const canRedo = useEditorState(editor, (state) => state.history.undone.length > 0);
  return (
    <div className={classes.undo}>
      <Tooltip label="Undo (Ctrl Z)">
        <ActionIcon
          variant="subtle"
          className={classes.icon}
          size={36}
          aria-label="Undo"
          disabled={!canUndo}
          onClick={() => editor.dispatch({ kind: "undo" })}
        >
          <Undo2 size={19} strokeWidth={1.75} />
        </ActionIcon>
      </Tooltip>
      <Tooltip label="Redo (Ctrl Shift Z)">
        <ActionIcon
          variant="subtle"
          className={classes.icon}
          size={36}
          aria-label="Redo"
          disabled={!canRedo}
          onClick={() => editor.dispatch({ kind: "redo" })}
        >
          <Redo2 size={19} strokeWidth={1.75} />
        </ActionIcon>
      </Tooltip>
    </div>
  );
}

/** Tools, what is being drawn, undo and redo. */
export const ToolBar = memo(function ToolBar(props: ToolBarProps) {
  const { editor, mode, readOnly, characteristics, notation, isPickerOpen, onPickerOpen, end } = props;
  return (
    <div className={classes.bar}>
      <ToolButtons editor={editor} readOnly={readOnly} />
      {!readOnly && (
        <div className={classes.subject}>
          <SubjectPicker
            editor={editor}
            hasDecoys={mode === "reference"}
            characteristics={characteristics}
            notation={notation}
            isOpen={isPickerOpen}
            onOpen={onPickerOpen}
          />
          <RecentSubjects {...props} />
        </div>
      )}
      <div className={classes.status}>{end}</div>
      {!readOnly && <UndoButtons editor={editor} />}
      <Tooltip label="Keyboard">
        <ActionIcon
          className={classes.keyboard}
          variant="subtle"
          size={36}
          aria-label="Keyboard shortcuts"
          onClick={props.onShortcuts}
        >
          <Keyboard size={19} strokeWidth={1.75} />
        </ActionIcon>
      </Tooltip>
    </div>
  );
});
