/** How near second readers' blind plots come to the references, over a program: from the counts of each comparison. */
import { computeClusteredShare } from "@/lib/agreement/clustered-share";
import { type Agreement, computeAgreement } from "@/lib/agreement/compute-agreement";
import { type Statistic, toUndefined } from "@/lib/agreement/statistic";
import { DEFAULT_SCALES } from "@/lib/plot/grades";
import type { ReadingFigures } from "@/lib/plot/second-reading";

/** A second reading that was handed in. */
export interface ReadingPair {
  readonly readingId: string;
  readonly stoneId: string;
  /** Who wrote the version that it was compared with, and who read it again. */
  readonly first: string;
  readonly second: string;
  readonly figures: ReadingFigures;
  /** The scale that both graded clarity on. */
  readonly scale: readonly string[];
}

export interface ReaderPairRow {
  readonly first: string;
  readonly second: string;
  readonly readings: number;
  readonly inCommon: Statistic;
  /** Clarity grades given by both, and how many are the same. */
  readonly graded: number;
  readonly exact: number;
}

export interface ReaderAgreement {
  readonly readings: number;
  /** Marks that both have, of all that either has; a reading is a cluster. */
  readonly inCommon: Statistic;
  /** Of those in common, marks that both call the same. */
  readonly named: Statistic;
  /** Of clarity: the reference as the first rater, the second reading as the second. */
  readonly clarity: Agreement;
  /** Readings whose clarity is on another scale than most. */
  readonly otherScale: number;
  /** By who wrote and who read, the most readings first. */
  readonly pairs: readonly ReaderPairRow[];
}

const inCommonOf = (pairs: readonly ReadingPair[]) =>
  computeClusteredShare(
    pairs.map(({ figures: { first, second, matched } }) => ({
      hits: matched,
      trials: first + second - matched,
    })),
    "no reading has a mark",
  );

const findClarity = ({ figures }: ReadingPair) =>
  figures.grades.find(({ property }) => property === "clarity");

/** The scale that most readings grade on; of two equal ones the earlier, and the default of none. */
function findScale(pairs: readonly ReadingPair[]): readonly string[] {
  const groups = new Map<string, { scale: readonly string[]; count: number }>();
  for (const { scale } of pairs) {
    const key = JSON.stringify(scale);
    groups.set(key, { scale, count: (groups.get(key)?.count ?? 0) + 1 });
  }
  return [...groups.values()].reduce<{ scale: readonly string[]; count: number }>(
    (best, one) => (one.count > best.count ? one : best),
    { scale: DEFAULT_SCALES.clarity, count: 0 },
  ).scale;
}

function compareClarity(pairs: readonly ReadingPair[]): Pick<ReaderAgreement, "clarity" | "otherScale"> {
  const scale = findScale(pairs);
  const key = JSON.stringify(scale);
  const own = pairs.filter((pair) => JSON.stringify(pair.scale) === key);
  const ratings = own.flatMap((pair) => {
    const grade = findClarity(pair);
    if (grade === undefined) return [];
    return [
      { item: pair.readingId, rater: "reference", grade: grade.first },
      { item: pair.readingId, rater: "second reading", grade: grade.second },
    ];
  });
  return { clarity: computeAgreement(ratings, scale, "readers"), otherScale: pairs.length - own.length };
}

function listPairs(pairs: readonly ReadingPair[]): ReaderPairRow[] {
  const groups = new Map<string, ReadingPair[]>();
  for (const pair of pairs) {
    const key = JSON.stringify([pair.first, pair.second]);
    groups.set(key, [...(groups.get(key) ?? []), pair]);
  }
  return [...groups.values()]
    .map((own): ReaderPairRow => {
      const grades = own.flatMap((pair) => findClarity(pair) ?? []);
      return {
        first: own[0]?.first ?? "",
        second: own[0]?.second ?? "",
        readings: own.length,
        inCommon: inCommonOf(own),
        graded: grades.length,
        exact: grades.filter(({ steps }) => steps === 0).length,
      };
    })
    .sort((a, b) => b.readings - a.readings || a.first.localeCompare(b.first, "en"));
}

/** Agreement of a program's second readings with its references. No reading: every statistic undefined. */
export function computeReaderAgreement(pairs: readonly ReadingPair[]): ReaderAgreement {
  const named = pairs.map(({ figures }) => ({ hits: figures.named, trials: figures.matched }));
  return {
    readings: pairs.length,
    inCommon: pairs.length === 0 ? toUndefined("nobody has handed a second reading in") : inCommonOf(pairs),
    named: computeClusteredShare(named, "no mark is in common"),
    ...compareClarity(pairs),
    pairs: listPairs(pairs),
  };
}

/** Clarity grades so many steps apart, or less than this share of marks in common, is a reference to look at. */
export const READER_RULES = { steps: 2, inCommon: 0.6 } as const;

/** Why two readers disagree on a stone, as sentences; none where they do not. */
export function listReaderReasons(pair: ReadingPair): string[] {
  const { first, second, matched } = pair.figures;
  const either = first + second - matched;
  const grade = findClarity(pair);
  const reasons: string[] = [];
  if (either > 0 && matched / either < READER_RULES.inCommon) {
    reasons.push(`Its second reader has ${matched} of ${either} marks in common with the reference.`);
  }
  if (grade !== undefined && Math.abs(grade.steps) >= READER_RULES.steps) {
    reasons.push(`Its second reader gives ${grade.second}, the reference ${grade.first}.`);
  }
  return reasons;
}
