/** What an exercise is set with. */
import { z } from "zod";
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
});
export type ExerciseFields = z.infer<typeof ExerciseFieldsSchema>;

/** The faults of the dates; none means that the exercise opens, is due and closes in this order, and that debriefs
 * open no sooner than it is due. */
export function findDateFaults({
  opensAt,
  dueAt,
  closesAt,
  debriefsAt,
}: Pick<ExerciseFields, "opensAt" | "dueAt" | "closesAt" | "debriefsAt">): {
  path: string;
  message: string;
}[] {
  const faults: { path: string; message: string }[] = [];
  if (Date.parse(dueAt) <= Date.parse(opensAt)) {
    faults.push({ path: "dueAt", message: "must come after the opening" });
  }
  if (closesAt !== null && Date.parse(closesAt) < Date.parse(dueAt)) {
    faults.push({ path: "closesAt", message: "must not come before the due date" });
  }
  if (debriefsAt !== null && Date.parse(debriefsAt) < Date.parse(dueAt)) {
    faults.push({ path: "debriefsAt", message: "must not come before the due date" });
  }
  return faults;
}
