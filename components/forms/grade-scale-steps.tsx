"use client";

import { type CSSProperties, useId } from "react";
import { findGradeMeaning } from "@/components/forms/grade-meanings";
import classes from "@/components/forms/grade-scale-steps.module.css";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import type { GradedProperty } from "@/lib/plot/grades";

export interface GradeScaleStepsProps {
  property: GradedProperty;
  /** Best to worst. */
  scale: readonly string[];
  value: string | null;
  onChange: (grade: string | null) => void;
  disabled?: boolean;
}

/** On a narrow place a long scale stands in two rows of equal length. */
function toColumns(steps: number): CSSProperties {
  const narrow = steps > 6 ? Math.ceil(steps / 2) : steps;
  return { "--steps": steps, "--steps-narrow": narrow } as CSSProperties;
}

/** A grade picked on its whole scale, best to worst, with what it means spelled out. */
export function GradeScaleSteps({
  property,
  scale,
  value,
  onChange,
  disabled = false,
}: GradeScaleStepsProps) {
  const name = useId();
  const label = PROPERTY_LABELS[property];
  const meaning = value === null ? null : findGradeMeaning(property, value);
  return (
    <fieldset
      className={classes.root}
      disabled={disabled}
      data-property={property}
      data-long={scale.length > 6 || undefined}
    >
      <legend className={classes.legend}>{label}</legend>
      <div className={classes.line}>
        <span className={classes.said} aria-live="polite">
          {value === null ? "Not given" : meaning === null ? value : `${value}: ${meaning}`}
        </span>
        {value !== null && !disabled && (
          <button
            type="button"
            className={classes.clear}
            onClick={() => onChange(null)}
            aria-label={`Clear ${property}`}
          >
            Clear
          </button>
        )}
      </div>
      <div className={classes.scale} style={toColumns(scale.length)}>
        {scale.map((grade) => (
          <label key={grade} className={classes.step}>
            <input
              type="radio"
              name={name}
              value={grade}
              checked={value === grade}
              onChange={() => onChange(grade)}
            />
            <span>{grade}</span>
          </label>
        ))}
      </div>
      <div className={classes.ends} aria-hidden="true">
        <span>best</span>
        <span>worst</span>
      </div>
    </fieldset>
  );
}
