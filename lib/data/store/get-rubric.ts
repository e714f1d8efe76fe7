import { parseColumn } from "@/lib/data/store/parse-column";
import { type Rubric, RubricSchema } from "@/lib/plot/rubric";

/** The rubric in force of an exercise that was read with its latest version first. An exercise has one from the start. */
export function getRubric<R extends { readonly version: number; readonly body: unknown }>(
  rubrics: readonly R[],
): { rubric: Rubric; row: R } {
  const [row] = rubrics;
  if (row === undefined) throw new Error("an exercise without a rubric");
  return { rubric: parseColumn(RubricSchema, row.body, "RubricVersion.body"), row };
}
