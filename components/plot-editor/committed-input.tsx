"use client";

import { TextInput } from "@mantine/core";
import { useState } from "react";

interface CommittedInputProps {
  readonly label: string;
  /** As it stands; shown again when what was typed is refused. */
  readonly value: string;
  readonly inputMode?: "decimal" | "numeric" | "text";
  readonly unit?: string;
  /** Called on Enter or on leaving, with what was typed if it differs. Gives a plain reason when it is refused. */
  readonly onCommit: (text: string) => string | null;
}

/** A field that takes effect when it is left or on Enter, so that one change is one undo entry. */
export function CommittedInput({ label, value, inputMode = "decimal", unit, onCommit }: CommittedInputProps) {
  const [text, setText] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const commit = () => {
    if (text === null || text.trim() === value) {
      setText(null);
      setFault(null);
      return;
    }
    const refused = onCommit(text.trim());
    setFault(refused);
    if (refused === null) setText(null);
  };
  return (
    <TextInput
      label={label}
      size="sm"
      inputMode={inputMode}
      value={text ?? value}
      error={fault}
      rightSection={unit === undefined ? null : <span aria-hidden="true">{unit}</span>}
      onChange={(event) => setText(event.currentTarget.value)}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === "Enter") {
          event.preventDefault();
          commit();
        } else if (event.key === "Escape") {
          setText(null);
          setFault(null);
        }
      }}
    />
  );
}
