import { z } from "zod";
import { AppError, type Fault } from "@/lib/base/app-error";
import { CUT_LABELS, type CutName } from "@/lib/gem/cut-name";
import { CUT_RULES, type CutRule, PROPORTION_LABELS, type ProportionKey } from "@/lib/gem/cut-rules";

/** A facet side of a custom cut as it is typed in. */
export const SideSchema = z.enum(["crown", "girdle", "pavilion"]);

/**
 * One facet plane of a custom cut, as faceting diagrams give it: `angleDeg` between the facet and the girdle
 * plane (0 for a table or a culet, 90 for a girdle facet), `azimuthDeg` clockwise from 12 as the crown is seen,
 * `distance` from the origin in any unit that is the same for all planes (the stone is scaled to a girdle width
 * of 1 and centred), and a name whose trailing number is taken off to give the kind ("crown main 3").
 */
export const PlaneSpecSchema = z.strictObject({
  name: z.string().trim().min(1).max(60),
  side: SideSchema,
  angleDeg: z.number().min(0).max(90),
  azimuthDeg: z.number().min(-360).max(720),
  distance: z.number().positive().max(1000),
});
export type PlaneSpec = z.infer<typeof PlaneSpecSchema>;

/**
 * The numbers that fix a cut's geometry. Every key is optional; `getProportions` fills in what the cut needs
 * and judges ranges, which differ from cut to cut. Percentages are of the girdle width unless the label of the
 * key says otherwise (see PROPORTION_LABELS); angles are degrees from the girdle plane.
 */
export const ProportionsSchema = z.strictObject({
  tablePct: z.number().optional(),
  crownAngleDeg: z.number().optional(),
  pavilionAngleDeg: z.number().optional(),
  starPct: z.number().optional(),
  lowerHalfPct: z.number().optional(),
  girdlePct: z.number().optional(),
  culetPct: z.number().optional(),
  lengthToWidth: z.number().optional(),
  shoulderPct: z.number().optional(),
  wingPct: z.number().optional(),
  cleftPct: z.number().optional(),
  cornerPct: z.number().optional(),
  chevrons: z.int().optional(),
  crownSteps: z.int().optional(),
  pavilionSteps: z.int().optional(),
  stepDropDeg: z.number().optional(),
  planes: z.array(PlaneSpecSchema).min(4).max(400).optional(),
});
export type Proportions = z.infer<typeof ProportionsSchema>;

/** The keys that every cut admits in a file, whether or not its geometry uses them (design: exercise sets). */
const SHARED_KEYS: readonly ProportionKey[] = [
  "tablePct",
  "crownAngleDeg",
  "pavilionAngleDeg",
  "starPct",
  "lowerHalfPct",
  "girdlePct",
  "culetPct",
  "lengthToWidth",
];

/** The keys that count something. */
const COUNTS: readonly ProportionKey[] = ["chevrons", "crownSteps", "pavilionSteps"];

function findRangeFault(cut: CutName, key: ProportionKey, rule: CutRule, value: number): Fault | null {
  const label = PROPORTION_LABELS[key];
  if (COUNTS.includes(key) && !Number.isInteger(value)) {
    return { path: key, message: `${label} is a whole number, not ${value}` };
  }
  if (value >= rule.min && value <= rule.max) return null;
  return {
    path: key,
    message: `${label} of a ${CUT_LABELS[cut].toLowerCase()} is between ${rule.min} and ${rule.max}, not ${value}`,
  };
}

function checkNumbers(cut: CutName, given: Proportions, filled: Proportions, faults: Fault[]): void {
  const rules = CUT_RULES[cut];
  for (const key of Object.keys(PROPORTION_LABELS) as ProportionKey[]) {
    const value = given[key];
    const rule = rules[key];
    if (rule === undefined) {
      if (value === undefined || SHARED_KEYS.includes(key)) continue;
      faults.push({ path: key, message: `a ${CUT_LABELS[cut].toLowerCase()} has no such proportion` });
      continue;
    }
    const fault = value === undefined ? null : findRangeFault(cut, key, rule, value);
    if (fault !== null) faults.push(fault);
    filled[key] = value ?? rule.standard;
  }
}

/**
 * The proportions of a cut with every number that it needs filled in. Keys of the exercise-set format that the
 * cut does not use (a star length on an emerald cut) are admitted and left out; a key that belongs to another
 * cut alone is refused. Empty input gives the cut's standard proportions. Throws AppError "bad-input" with one
 * fault for each number out of range; the path of a fault is the key.
 */
export function getProportions(cut: CutName, given: Proportions = {}): Proportions {
  const faults: Fault[] = [];
  const filled: Proportions = {};
  checkNumbers(cut, given, filled, faults);
  if (cut === "custom") {
    if (given.planes === undefined)
      faults.push({ path: "planes", message: "a custom cut needs its list of planes" });
    else filled.planes = given.planes;
  } else if (given.planes !== undefined) {
    faults.push({ path: "planes", message: "only a custom cut has a list of planes" });
  }
  if (faults.length > 0) {
    const first = faults[0];
    throw new AppError("bad-input", `These proportions are refused: ${first?.message ?? ""}.`, faults);
  }
  return filled;
}

/** One number of filled proportions; throws RangeError when the cut does not have it (a fault of the program). */
export function getProportion(proportions: Proportions, key: ProportionKey): number {
  const value = proportions[key];
  if (value === undefined) throw new RangeError(`getProportion: ${key} is not set`);
  return value;
}
