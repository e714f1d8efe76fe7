"use client";

import { TextInput } from "@mantine/core";
import type { KeyboardEvent } from "react";

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
  error?: string | null;
  unit?: string;
  required?: boolean;
  hideLabel?: boolean;
}

/** Rounds away what adding steps leaves behind in the last digits. */
function addStep(value: number, step: number): string {
  return String(Number((value + step).toFixed(4)));
}

/** A number as text: a comma or a point, arrow keys to step, and nothing refused while it is typed. */
export function NumberField(props: NumberFieldProps) {
  const { label, value, onChange, step, from, placeholder, description, error, unit, required } = props;
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
      label={props.hideLabel === true ? undefined : label}
      aria-label={props.hideLabel === true ? label : undefined}
      description={description}
      placeholder={placeholder}
      error={error ?? undefined}
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
