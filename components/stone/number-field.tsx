"use client";

import { TextInput } from "@mantine/core";
import type { KeyboardEvent } from "react";
import { toSentence } from "@/components/forms/to-sentence";
import classes from "@/components/stone/stone-form.module.css";

export interface NumberFieldProps {
  label: string;
  value: string;
  onChange: (typed: string) => void;
  /** How far one press of an arrow key goes. */
  step: number;
  /** Where the arrow keys start from while the field is empty. */
  from?: number;
  placeholder?: string;
  description?: string;
  /** A few words after the label. */
  hint?: string;
  className?: string | undefined;
  error?: string | null;
  unit?: string;
  required?: boolean;
}

/** Rounds away what adding steps leaves behind in the last digits. */
function addStep(value: number, step: number): string {
  return String(Number((value + step).toFixed(4)));
}

/** A number as text: a comma or a point, arrow keys to step, and nothing refused while it is typed. */
export function NumberField(props: NumberFieldProps) {
  const { label, hint, value, onChange, step, from, placeholder, description, error, unit, required } = props;
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "ArrowUp" && event.key !== "ArrowDown") return;
    const typed = value.trim() === "" ? from : Number(value.trim().replace(",", "."));
    if (typed === undefined || !Number.isFinite(typed)) return;
    event.preventDefault();
    const size = event.shiftKey ? step * 10 : step;
    onChange(addStep(typed, event.key === "ArrowUp" ? size : -size));
  };
  return (
    <TextInput
      label={
        hint === undefined || hint === "" ? (
          label
        ) : (
          <>
            {label} <span className={classes.hint}>{hint}</span>
          </>
        )
      }
      className={props.className}
      description={description}
      placeholder={placeholder}
      error={error === null || error === undefined ? undefined : toSentence(error)}
      required={required === true}
      inputMode="decimal"
      autoComplete="off"
      value={value}
      onChange={(event) => onChange(event.currentTarget.value)}
      onKeyDown={onKeyDown}
      rightSection={unit === undefined ? undefined : <span className="muted">{unit}</span>}
      rightSectionPointerEvents="none"
      rightSectionWidth={unit === undefined ? undefined : 40}
    />
  );
}
