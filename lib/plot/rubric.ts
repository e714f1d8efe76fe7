/** The numbers by which a plot is scored (scoring.md), kept as data. Versioned by whoever stores them. */
import { z } from "zod";

const share = z.number().min(0).max(1);
const points = z.number().min(0).max(100);
const distance = z.number().gt(0).max(1);

export const RubricSchema = z.strictObject({
  near: distance,
  far: distance,
  parts: z.strictObject({ location: share, type: share, extent: share }),
  otherView: share,
  merged: share,
  orientation: z.enum(["free", "given"]),
  turnSupport: z.int().min(1).max(50),
  wouldFitGain: points,
  deductions: z.strictObject({
    dust: points,
    echo: points,
    glint: points,
    unexplained: points,
    double: points,
    fragment: points,
  }),
  deductionCap: points,
  dust: z.strictObject({
    extent: distance,
    burstDots: z.int().min(2).max(100),
    burstGapMs: z.number().gt(0).max(60_000),
  }),
  glint: z.strictObject({
    rim: share,
    oppositeDeg: z.number().min(0).max(90),
    prongDeg: z.number().min(0).max(90),
  }),
  shares: z.strictObject({ plot: points, clarity: points, otherGrades: points }),
  gradeCredit: z.array(share).min(1).max(40),
});
export type Rubric = z.infer<typeof RubricSchema>;

/** What an exercise set may override, key by key, also within the nested tables. */
export const RubricOverridesSchema = z.strictObject({
  ...RubricSchema.partial().shape,
  parts: RubricSchema.shape.parts.partial().optional(),
  deductions: RubricSchema.shape.deductions.partial().optional(),
  dust: RubricSchema.shape.dust.partial().optional(),
  glint: RubricSchema.shape.glint.partial().optional(),
  shares: RubricSchema.shape.shares.partial().optional(),
});
export type RubricOverrides = z.infer<typeof RubricOverridesSchema>;

/** This project's own teaching choices (scoring.md 6). */
export const DEFAULT_RUBRIC: Rubric = {
  near: 0.03,
  far: 0.1,
  parts: { location: 0.5, type: 0.35, extent: 0.15 },
  otherView: 0.5,
  merged: 0.4,
  orientation: "free",
  turnSupport: 3,
  wouldFitGain: 20,
  deductions: { dust: 4, echo: 3, glint: 3, unexplained: 3, double: 1, fragment: 0.5 },
  deductionCap: 40,
  dust: { extent: 0.02, burstDots: 6, burstGapMs: 1500 },
  glint: { rim: 0.08, oppositeDeg: 12, prongDeg: 8 },
  shares: { plot: 70, clarity: 20, otherGrades: 10 },
  gradeCredit: [1, 0.6, 0.2, 0],
};

const SUM_TOLERANCE = 1e-9;

/** Faults that lie between the numbers of a rubric; none means that it can be scored by. */
export function findRubricFaults(rubric: Rubric): { path: string; message: string }[] {
  const faults: { path: string; message: string }[] = [];
  if (rubric.far <= rubric.near) faults.push({ path: "far", message: "must be larger than near" });
  const parts = rubric.parts.location + rubric.parts.type + rubric.parts.extent;
  if (Math.abs(parts - 1) > SUM_TOLERANCE)
    faults.push({ path: "parts", message: `must add up to 1, not ${parts}` });
  const shares = rubric.shares.plot + rubric.shares.clarity + rubric.shares.otherGrades;
  if (Math.abs(shares - 100) > SUM_TOLERANCE) {
    faults.push({ path: "shares", message: `must add up to 100, not ${shares}` });
  }
  rubric.gradeCredit.forEach((credit, steps) => {
    const before = rubric.gradeCredit[steps - 1];
    if (before !== undefined && credit > before) {
      faults.push({
        path: `gradeCredit[${steps}]`,
        message: "must not exceed the credit for a nearer grade",
      });
    }
  });
  return faults;
}

/** The rubric of a set: the defaults where it says nothing. Does not check; see `findRubricFaults`. */
export function resolveRubric(overrides: RubricOverrides = {}, base: Rubric = DEFAULT_RUBRIC): Rubric {
  return RubricSchema.parse({
    ...base,
    ...dropUndefined(overrides),
    parts: { ...base.parts, ...dropUndefined(overrides.parts) },
    deductions: { ...base.deductions, ...dropUndefined(overrides.deductions) },
    dust: { ...base.dust, ...dropUndefined(overrides.dust) },
    glint: { ...base.glint, ...dropUndefined(overrides.glint) },
    shares: { ...base.shares, ...dropUndefined(overrides.shares) },
  });
}

/** Numbers that only make sense with one another (`findRubricFaults`). */
const BOUND_TOGETHER = [["near", "far"], ["parts"], ["shares"]] as const;

/**
 * The rubric that exercises of a set begin with in a program whose defaults are `base`: the set's own keys, and the
 * program's elsewhere. A set is written and checked against `DEFAULT_RUBRIC`, so where it names one of numbers that
 * are bound together (near and far, the parts, the shares), the others of them are those too: the result has no
 * fault where neither the set over `DEFAULT_RUBRIC` nor `base` has one.
 */
export function resolveSetRubric(overrides: RubricOverrides, base: Rubric): Rubric {
  const given = dropUndefined(overrides);
  const meant = BOUND_TOGETHER.filter((keys) => keys.some((key) => given[key] !== undefined)).flatMap(
    (keys) => keys.map((key) => [key, DEFAULT_RUBRIC[key]] as const),
  );
  return resolveRubric(overrides, { ...base, ...Object.fromEntries(meant) });
}

function dropUndefined(given: object | undefined): Record<string, unknown> {
  return Object.fromEntries(Object.entries(given ?? {}).filter(([, value]) => value !== undefined));
}
