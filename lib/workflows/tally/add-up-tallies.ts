import { type Counts, sumCounts } from "@/lib/agreement/counts";
import { CountsSchema } from "@/lib/agreement/counts-schema";
import { parseColumn } from "@/lib/data/store/parse-column";
import { TALLY_SUM_KINDS, type TallySumKind, toWeek } from "@/lib/plot/result-tally";

export interface TallyToAdd {
  readonly exerciseId: string;
  readonly exerciseStoneId: string;
  readonly studentId: string;
  readonly handedInAt: Date;
  readonly counts: unknown;
}

/** What `addUpTallies` reads of a tally. */
export const TALLY_TO_ADD = {
  exerciseId: true,
  exerciseStoneId: true,
  studentId: true,
  handedInAt: true,
  counts: true,
} as const;

export interface AddedTallies {
  readonly kind: TallySumKind;
  /** As TALLY_SUM_KINDS says. */
  readonly key: string;
  readonly counts: Counts;
}

const KEY_OF: Readonly<Record<TallySumKind, (tally: TallyToAdd) => string>> = {
  exercise: ({ exerciseId }) => exerciseId,
  stone: ({ exerciseStoneId }) => exerciseStoneId,
  student: ({ studentId }) => studentId,
  week: ({ handedInAt }) => toWeek(handedInAt),
};

/** The tallies of one exercise added up in each of the ways; the exercise's own sum is there even when it is of nothing. */
export function addUpTallies(exerciseId: string, tallies: readonly TallyToAdd[]): AddedTallies[] {
  const counted = tallies.map((tally) => ({
    tally,
    counts: parseColumn(CountsSchema, tally.counts, "ResultTally.counts"),
  }));
  return TALLY_SUM_KINDS.flatMap((kind) => {
    const groups = new Map<string, Counts[]>(kind === "exercise" ? [[exerciseId, []]] : []);
    for (const { tally, counts } of counted) {
      const key = KEY_OF[kind](tally);
      const group = groups.get(key) ?? [];
      groups.set(key, group);
      group.push(counts);
    }
    return [...groups].map(([key, group]) => ({ kind, key, counts: sumCounts(group) }));
  });
}
