"use client";

import { Select } from "@mantine/core";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import type { GradedProperty } from "@/lib/plot/grades";

export interface GradeScaleSelectProps {
  property: GradedProperty;
  /** Best to worst. */
  scale: readonly string[];
  value: string | null;
  onChange: (grade: string | null) => void;
  label?: string;
  description?: string;
  required?: boolean;
  disabled?: boolean;
  error?: string;
}

/** One grade from its scale, with the scale's ends spelled out under it. */
export function GradeScaleSelect(props: GradeScaleSelectProps) {
  const { property, scale, value, onChange, required = false, disabled = false } = props;
  const best = scale.at(0);
  const worst = scale.at(-1);
  return (
    <Select
      label={props.label ?? PROPERTY_LABELS[property]}
      description={props.description ?? `${scale.length} steps, from ${best} (best) to ${worst}`}
      placeholder="Not given"
      data={[...scale]}
      value={value}
      onChange={onChange}
      clearable={!required}
      clearButtonProps={{ "aria-label": `Clear ${property}` }}
      required={required}
      disabled={disabled}
      error={props.error}
      checkIconPosition="right"
    />
  );
}
