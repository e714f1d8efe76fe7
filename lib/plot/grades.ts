/** Grade scales and grades. The default scales are listed best to worst (scoring.md 6). */
import { z } from "zod";

export const GRADED_PROPERTIES = ["clarity", "colour", "polish", "symmetry", "fluorescence"] as const;
export type GradedProperty = (typeof GRADED_PROPERTIES)[number];

const ScaleSchema = z
  .array(z.string().min(1).max(40))
  .min(2, "a scale needs two grades or more")
  .max(40)
  .refine((grades) => new Set(grades).size === grades.length, "names a grade twice");

export const ScalesSchema = z.strictObject({
  clarity: ScaleSchema,
  colour: ScaleSchema,
  polish: ScaleSchema,
  symmetry: ScaleSchema,
  fluorescence: ScaleSchema,
});
export type Scales = z.infer<typeof ScalesSchema>;

/** What an exercise set may override, scale by scale. */
export const ScaleOverridesSchema = ScalesSchema.partial();
export type ScaleOverrides = z.infer<typeof ScaleOverridesSchema>;

const FINISH = ["Excellent", "Very good", "Good", "Fair", "Poor"];

/**
 * Clarity: International Diamond Council, Rule Book 2.3. Colour: the same, 3.1, letters only, M to Z as one.
 * Polish, symmetry and fluorescence: common practice, no source.
 */
export const DEFAULT_SCALES: Scales = {
  clarity: ["Loupe-clean", "VVS1", "VVS2", "VS1", "VS2", "SI1", "SI2", "P1", "P2", "P3"],
  colour: ["D", "E", "F", "G", "H", "I", "J", "K", "L", "M-Z"],
  polish: FINISH,
  symmetry: FINISH,
  fluorescence: ["None", "Faint", "Medium", "Strong"],
};

/** The scales of a set: the defaults where it says nothing. */
export function resolveScales(overrides: ScaleOverrides = {}): Scales {
  return {
    clarity: overrides.clarity ?? DEFAULT_SCALES.clarity,
    colour: overrides.colour ?? DEFAULT_SCALES.colour,
    polish: overrides.polish ?? DEFAULT_SCALES.polish,
    symmetry: overrides.symmetry ?? DEFAULT_SCALES.symmetry,
    fluorescence: overrides.fluorescence ?? DEFAULT_SCALES.fluorescence,
  };
}

const GradeSchema = z.string().min(1).max(40);

/** A student's grades: any may be missing while the plot is on the bench. */
export const PlotGradesSchema = z.strictObject({
  clarity: GradeSchema.optional(),
  colour: GradeSchema.optional(),
  polish: GradeSchema.optional(),
  symmetry: GradeSchema.optional(),
  fluorescence: GradeSchema.optional(),
});
export type PlotGrades = z.infer<typeof PlotGradesSchema>;

/** A reference's grades: clarity must be there. */
export const ReferenceGradesSchema = PlotGradesSchema.required({ clarity: true });
export type ReferenceGrades = z.infer<typeof ReferenceGradesSchema>;

/** The faults of grades against their scales: a grade that its scale does not have. */
export function findGradeFaults(
  grades: PlotGrades,
  scales: Scales,
): { property: GradedProperty; message: string }[] {
  return GRADED_PROPERTIES.flatMap((property) => {
    const grade = grades[property];
    if (grade === undefined || scales[property].includes(grade)) return [];
    return [
      { property, message: `"${grade}" is not on the ${property} scale (${scales[property].join(", ")})` },
    ];
  });
}
