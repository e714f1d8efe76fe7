/** What an exercise is set with. */
import { z } from "zod";
import type { Fault } from "@/lib/base/app-error";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { RubricOverridesSchema } from "@/lib/plot/rubric";

const instant = z.iso.datetime({ offset: true });

/** The fields of an exercise, before what lies between them is checked. */
export const ExerciseFieldsSchema = z.strictObject({
  title: z.string().trim().min(1, "give the exercise a title").max(200),
  notes: z.string().trim().max(10_000).default(""),
  opensAt: instant,
  dueAt: instant,
  closesAt: instant.nullable(),
  /** From when on debriefs open by themselves; null: when staff release them. */
  debriefsAt: instant.nullable().default(null),
  rules: ExerciseRulesSchema,
  /** Over the tray's rubric for a new exercise, over the one in force for a change. */
  rubric: RubricOverridesSchema.optional(),
  stoneIds: z
    .array(z.string())
    .min(1, "choose one stone or more")
    .max(200)
    .refine((ids) => new Set(ids).size === ids.length, "names a stone twice"),
  /** When a stone opens, by its id, where that is later than the exercise; every other opens with it. */
  stoneOpenings: z.record(z.string(), instant).default({}),
});
export type ExerciseFields = z.infer<typeof ExerciseFieldsSchema>;

/** The faults of the stones' openings; none means that each is a stone of the exercise and opens before it is due. */
function findOpeningFaults({
  opensAt,
  dueAt,
  stoneIds,
  stoneOpenings,
}: Pick<ExerciseFields, "opensAt" | "dueAt" | "stoneIds" | "stoneOpenings">): Fault[] {
  return Object.entries(stoneOpenings).flatMap(([stoneId, at]) => {
    const path = `stoneOpenings.${stoneId}`;
    if (!stoneIds.includes(stoneId)) return [{ path, message: "is no stone of this exercise" }];
    if (Date.parse(at) < Date.parse(opensAt))
      return [{ path, message: "must not come before the exercise opens" }];
    if (Date.parse(at) >= Date.parse(dueAt)) return [{ path, message: "must come before the due date" }];
    return [];
  });
}

/** The faults of the dates; none means that the exercise opens, is due and closes in this order, that debriefs
 * open no sooner than it is due, and each stone between its opening and its due date. */
export function findDateFaults(
  fields: Pick<
    ExerciseFields,
    "opensAt" | "dueAt" | "closesAt" | "debriefsAt" | "stoneIds" | "stoneOpenings"
  >,
): Fault[] {
  const { opensAt, dueAt, closesAt, debriefsAt } = fields;
  const faults: Fault[] = [];
  if (Date.parse(dueAt) <= Date.parse(opensAt)) {
    faults.push({ path: "dueAt", message: "must come after the opening" });
  }
  if (closesAt !== null && Date.parse(closesAt) < Date.parse(dueAt)) {
    faults.push({ path: "closesAt", message: "must not come before the due date" });
  }
  if (debriefsAt !== null && Date.parse(debriefsAt) < Date.parse(dueAt)) {
    faults.push({ path: "debriefsAt", message: "must not come before the due date" });
  }
  return [...faults, ...findOpeningFaults(fields)];
}
