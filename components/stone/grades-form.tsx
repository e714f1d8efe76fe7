"use client";

import { GradeScaleSelect } from "@/components/forms/grade-scale-select";
import classes from "@/components/stone/grades-form.module.css";
import { GRADED_PROPERTIES, type GradedProperty, type PlotGrades, type Scales } from "@/lib/plot/grades";

export interface GradesFormProps {
  scales: Scales;
  grades: PlotGrades;
  onChange: (grades: PlotGrades) => void;
}

function setGrade(grades: PlotGrades, property: GradedProperty, grade: string | null): PlotGrades {
  const { [property]: _before, ...rest } = grades;
  return grade === null ? rest : { ...rest, [property]: grade };
}

/** The grades of a reference: clarity must be given, the others may. */
export function GradesForm({ scales, grades, onChange }: GradesFormProps) {
  return (
    <div className={classes.root}>
      {GRADED_PROPERTIES.map((property) => (
        <GradeScaleSelect
          key={property}
          property={property}
          scale={scales[property]}
          value={grades[property] ?? null}
          onChange={(grade) => onChange(setGrade(grades, property, grade))}
          required={property === "clarity"}
          description=""
        />
      ))}
    </div>
  );
}
