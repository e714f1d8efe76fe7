"use client";

import { useId } from "react";
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
    <fieldset className={classes.root} disabled={disabled}>
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
      <div className={classes.scale}>
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
