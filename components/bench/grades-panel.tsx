"use client";

import classes from "@/components/bench/grades-panel.module.css";
import { GradeScaleSteps } from "@/components/forms/grade-scale-steps";
import { PracticeNote } from "@/components/ui/practice-note";
import { GRADED_PROPERTIES, type GradedProperty, type PlotGrades, type Scales } from "@/lib/plot/grades";

export interface GradesPanelProps {
  grades: PlotGrades;
  scales: Scales;
  canWrite: boolean;
  onGrade: (property: GradedProperty, grade: string | null) => void;
}

/** The grades of the stone, each on its whole scale. */
export function GradesPanel({ grades, scales, canWrite, onGrade }: GradesPanelProps) {
  return (
    <section className={classes.root} aria-labelledby="grades-title">
      <h2 id="grades-title">Grades</h2>
      {GRADED_PROPERTIES.map((property) => (
        <GradeScaleSteps
          key={property}
          property={property}
          scale={scales[property]}
          value={grades[property] ?? null}
          onChange={(grade) => onGrade(property, grade)}
          disabled={!canWrite}
        />
      ))}
      <PracticeNote />
    </section>
  );
}
