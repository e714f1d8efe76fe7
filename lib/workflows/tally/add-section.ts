/** A section's exercises added up, with everything of its report that is worked out of sums and tallies alone. */
import { deriveClusterRates } from "@/lib/agreement/cluster-rates";
import { deriveRates, type Rates } from "@/lib/agreement/derive-rates";
import type { RaschFit } from "@/lib/agreement/fit-rasch";
import { deriveGradeCoefficients } from "@/lib/agreement/grade-agreement";
import type { JoinedCounts } from "@/lib/agreement/join-counts";
import { rankDifficulty, type StoneDifficulty } from "@/lib/agreement/rank-difficulty";
import type { SectionReport } from "@/lib/agreement/section-report";
import type { SectionWithParts } from "@/lib/data/store/find-section";
import { fitDetection, fromItem } from "@/lib/workflows/tally/fit-detection";
import { joinSums, joinSumsByKey, readScales } from "@/lib/workflows/tally/join-sums";
import { KeptByStamps } from "@/lib/workflows/tally/kept-by-stamps";
import { listAllTallySums, listTallyStamps } from "@/lib/workflows/tally/list-tally-sums";

type Exercises = SectionWithParts["exercises"];

/** A student's figures of a section. */
export interface AddedStudent {
  readonly rates: Rates;
  readonly found: number;
  readonly overlooked: number;
}

export interface AddedSection
  extends Pick<SectionReport, "rates" | "coefficients" | "clusters" | "weeks" | "otherScale"> {
  readonly whole: JoinedCounts;
  readonly fit: RaschFit;
  /** By the student's id: whoever has a tally. */
  readonly students: ReadonlyMap<string, AddedStudent>;
  /** The hardest first; a stone that is set twice is one. */
  readonly stones: readonly (StoneDifficulty & { readonly rates: Rates })[];
}

/** So many are remembered. */
const kept = new KeptByStamps<AddedSection>(80);

async function addUp(exercises: Exercises, without: ReadonlySet<string>): Promise<AddedSection> {
  const ids = exercises.map(({ id }) => id);
  const scales = readScales(exercises);
  const sums = await listAllTallySums(ids, without);
  const whole = joinSums(sums.exercise, scales);
  const byStudent = joinSumsByKey(sums.student, scales, whole.scales);
  const byWeek = joinSumsByKey(sums.week, scales, whole.scales);
  const stoneOf = new Map(exercises.flatMap(({ stones }) => stones.map(({ id, stoneId }) => [id, stoneId])));
  const stoneSums = sums.stone.map((row) => ({ ...row, key: stoneOf.get(row.key) ?? row.key }));
  const byStone = joinSumsByKey(stoneSums, scales, whole.scales);
  const fit = await fitDetection(ids, without);
  const [clarity, scale] = [whole.counts.grades.clarity, whole.scales.clarity];
  const toRates = ({ counts, scales: own }: JoinedCounts) => deriveRates(counts, own);
  return {
    whole,
    fit,
    rates: toRates(whole),
    coefficients: clarity && scale ? deriveGradeCoefficients(clarity, scale) : null,
    clusters: deriveClusterRates([...byStudent.values()].map(({ counts }) => counts)),
    otherScale: whole.otherScale,
    weeks: [...byWeek].map(([week, joined]) => ({ week, rates: toRates(joined) })),
    students: new Map(
      [...byStudent].map(([id, joined]) => {
        const { found, overlooked } = joined.counts;
        return [id, { rates: toRates(joined), found, overlooked }];
      }),
    ),
    stones: rankDifficulty(fit.items, (item) => fromItem(item).stoneId).flatMap((rank) => {
      const joined = byStone.get(rank.stoneId);
      return joined === undefined ? [] : [{ ...rank, rates: toRates(joined) }];
    }),
  };
}

/**
 * Adds exercises of a section up, as if the stones `without` had never been set; remembered by the stamps of their sums. The
 * caller has asked lib/access.
 */
export async function addSection(exercises: Exercises, without: ReadonlySet<string>): Promise<AddedSection> {
  const stamps = await listTallyStamps(exercises.map(({ id }) => id));
  const name = JSON.stringify([exercises.map(({ terms }) => terms), [...without].sort()]);
  const { value } = await kept.get(name, stamps, () => addUp(exercises, without));
  return value;
}
