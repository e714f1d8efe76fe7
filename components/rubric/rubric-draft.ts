/** A rubric while it is typed: numbers as text, read back into a rubric or into what is wrong with it. Pure. */
import { z } from "zod";
import type { Fault } from "@/lib/base/app-error";
import { findRubricFaults, type Rubric, RubricSchema } from "@/lib/plot/rubric";
import { fromShown, RUBRIC_FIELDS, type RubricField, readRubricAt, toShown } from "@/lib/plot/rubric-fields";

export const RubricDraftSchema = z.strictObject({
  /** By path. */
  numbers: z.record(z.string(), z.string().max(40)),
  orientation: RubricSchema.shape.orientation,
  /** Percent, by steps from the reference's grade. */
  credits: z.array(z.string().max(40)).min(1).max(40),
});
export type RubricDraft = z.infer<typeof RubricDraftSchema>;

const CREDIT: Pick<RubricField, "unit" | "min" | "max"> = { unit: "percent", min: 0, max: 100 };

/** The rubric's numbers as they are shown. */
export function toRubricDraft(rubric: Rubric): RubricDraft {
  return {
    numbers: Object.fromEntries(
      RUBRIC_FIELDS.map((field) => [field.path, toShown(field, readRubricAt(rubric, field.path))]),
    ),
    orientation: rubric.orientation,
    credits: rubric.gradeCredit.map((credit) => toShown(CREDIT, credit)),
  };
}

/** Takes a kept draft that is one of this program's, with every number of it; null for any other. */
export function parseRubricDraft(kept: unknown): RubricDraft | null {
  const draft = RubricDraftSchema.safeParse(kept).data;
  if (draft === undefined || RUBRIC_FIELDS.some(({ path }) => draft.numbers[path] === undefined)) return null;
  return draft;
}

type Limits = Pick<RubricField, "unit" | "min" | "max" | "isAboveMin" | "isWhole">;

/** What was typed as the rubric's value, or what is wrong with it. */
function readNumber(typed: string, limits: Limits): number | string {
  const text = typed.trim().replace(",", ".");
  const shown = Number(text);
  if (text === "" || !Number.isFinite(shown)) return "give a number";
  const { min, max } = limits;
  if (limits.isAboveMin === true && (shown <= min || shown > max))
    return `must be above ${min} and at most ${max}`;
  if (shown < min || shown > max) return `must lie between ${min} and ${max}`;
  if (limits.isWhole === true && !Number.isInteger(shown)) return "must be a whole number";
  return fromShown(limits, shown);
}

/** The faults between numbers in the units that they are shown in. */
function toShownFault({ path, message }: Fault, rubric: Rubric): Fault {
  const { parts } = rubric;
  if (path === "parts") {
    const sum = toShown(CREDIT, parts.location + parts.type + parts.extent);
    return { path, message: `place, characteristic and size must add up to 100 %, not ${sum} %` };
  }
  if (path === "far") return { path, message: "must be larger than the distance for full credit" };
  return { path, message };
}

export interface ReadRubric {
  /** Null while there is a fault. */
  readonly rubric: Rubric | null;
  /** At the field's path, at `gradeCredit[2]`, or at `parts` and `shares` for what must add up. */
  readonly faults: readonly Fault[];
}

function build(values: ReadonlyMap<string, number>, draft: RubricDraft, gradeCredit: number[]): Rubric {
  const built: Record<string, unknown> = { orientation: draft.orientation, gradeCredit };
  for (const [path, value] of values) {
    const [table = "", key] = path.split(".");
    if (key === undefined) built[table] = value;
    else built[table] = { ...(built[table] as object | undefined), [key]: value };
  }
  return RubricSchema.parse(built);
}

/** Reads a draft: the rubric, or every fault of it at its place. A number that was not touched keeps its exact value. */
export function readRubricDraft(draft: RubricDraft, before: Rubric): ReadRubric {
  const faults: Fault[] = [];
  const values = new Map<string, number>();
  for (const field of RUBRIC_FIELDS) {
    const typed = draft.numbers[field.path] ?? "";
    const old = readRubricAt(before, field.path);
    const read = typed === toShown(field, old) ? old : readNumber(typed, field);
    if (typeof read === "number") values.set(field.path, read);
    else faults.push({ path: field.path, message: read });
  }
  const credits = draft.credits.map((typed, steps) => {
    const old = before.gradeCredit[steps];
    const read = old !== undefined && typed === toShown(CREDIT, old) ? old : readNumber(typed, CREDIT);
    if (typeof read === "number") return read;
    faults.push({ path: `gradeCredit[${steps}]`, message: read });
    return 0;
  });
  if (faults.length > 0) return { rubric: null, faults };
  const rubric = build(values, draft, credits);
  const between = findRubricFaults(rubric).map((fault) => toShownFault(fault, rubric));
  return between.length > 0 ? { rubric: null, faults: between } : { rubric, faults: [] };
}
