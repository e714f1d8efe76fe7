import { type JoinedCounts, joinCounts } from "@/lib/agreement/join-counts";
import { parseColumn } from "@/lib/data/store/parse-column";
import { ExerciseTermsSchema, resolveTerms } from "@/lib/plot/exercise-terms";
import type { Scales } from "@/lib/plot/grades";
import type { TallySumRow } from "@/lib/workflows/tally/list-tally-sums";

export type ExerciseScales = ReadonlyMap<string, Scales>;

/** The grade scales of exercises, by id. */
export function readScales(
  exercises: readonly { readonly id: string; readonly terms: unknown }[],
): ExerciseScales {
  return new Map(
    exercises.map(({ id, terms }) => [
      id,
      resolveTerms(parseColumn(ExerciseTermsSchema, terms, "Exercise.terms")).scales,
    ]),
  );
}

/** Sums of several exercises as one (`joinCounts`). Rows of an exercise that `scales` does not have are a fault. */
export function joinSums(
  rows: readonly TallySumRow[],
  scales: ExerciseScales,
  on?: JoinedCounts["scales"],
): JoinedCounts {
  const parts = rows.map(({ exerciseId, counts }) => {
    const own = scales.get(exerciseId);
    if (own === undefined) throw new RangeError(`joinSums: no scales of exercise ${exerciseId}`);
    return { counts, scales: own };
  });
  return joinCounts(parts, on);
}

/** The same, apart by key: for each student, or each week, in the order of the keys. */
export function joinSumsByKey(
  rows: readonly TallySumRow[],
  scales: ExerciseScales,
  on: JoinedCounts["scales"],
): Map<string, JoinedCounts> {
  const groups = new Map<string, TallySumRow[]>();
  for (const row of rows) groups.set(row.key, [...(groups.get(row.key) ?? []), row]);
  return new Map(
    [...groups]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, own]) => [key, joinSums(own, scales, on)] as const),
  );
}
