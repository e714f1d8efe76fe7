import type { Counts } from "@/lib/agreement/counts";
import { deriveGradeRates, type GradeRates } from "@/lib/agreement/grade-agreement";
import { computeMeanInterval } from "@/lib/agreement/mean-interval";
import type { Statistic } from "@/lib/agreement/statistic";
import { getCount, sumTally, type Tally } from "@/lib/agreement/tally";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";

export interface CharacteristicRates {
  readonly characteristic: string;
  readonly reference: number;
  readonly found: number;
  /** Share of its reference marks that were found. */
  readonly detection: Statistic;
  /** Share of the found ones that were also named right. */
  readonly named: Statistic;
  readonly takenFor: Tally;
  readonly strays: number;
}

/** A point of the free-response curve: marks of this confidence or more. */
export interface ConfidencePoint {
  readonly confidence: number;
  /** Share of all reference marks found; null where there are none. */
  readonly foundShare: number | null;
  /** Null where there are no plots. */
  readonly straysPerPlot: number | null;
}

export interface Rates {
  readonly plots: number;
  /** Mean total, in points of 100. */
  readonly meanTotal: Statistic;
  /** Share of the reference marks that were found. */
  readonly detection: Statistic;
  readonly straysPerPlot: Statistic;
  readonly strays: Tally;
  /** Sorted by name. */
  readonly characteristics: readonly CharacteristicRates[];
  /** For each graded property that was counted. */
  readonly grades: Readonly<Record<string, GradeRates>>;
  /** Confidence 5 first. */
  readonly freeResponse: readonly ConfidencePoint[];
}

/** Points at confidence 5, 4, 3, 2, 1, cumulated (design.md, `report`). */
export function listConfidencePoints(counts: Counts): ConfidencePoint[] {
  const reference = counts.found + counts.overlooked;
  const sumFrom = (list: readonly number[], place: number) =>
    list.slice(place).reduce((sum, count) => sum + count, 0);
  return [5, 4, 3, 2, 1].map((confidence) => ({
    confidence,
    foundShare: reference === 0 ? null : sumFrom(counts.freeResponse.found, confidence - 1) / reference,
    straysPerPlot:
      counts.plots === 0 ? null : sumFrom(counts.freeResponse.strays, confidence - 1) / counts.plots,
  }));
}

function listCharacteristicRates(counts: Counts): CharacteristicRates[] {
  return Object.entries(counts.characteristics).map(([characteristic, own]) => ({
    characteristic,
    reference: own.reference,
    found: own.found,
    detection: computeWilsonInterval(own.found, own.reference, "no reference mark of this characteristic"),
    named: computeWilsonInterval(getCount(own.takenFor, characteristic), own.found, "none was found"),
    takenFor: own.takenFor,
    strays: own.strays,
  }));
}

/**
 * Every ratio of scoring.md 9 that counts carry, by the same formulas for one plot, a student, a section or a program.
 * Shares have Wilson intervals, means Student's; both take plots, and marks, as independent, so where one student gives
 * many marks they are too narrow (see `computeClusteredShare`). `scales` holds the full list of grades of each property.
 * Counts of nothing: every statistic undefined. RangeError for a counted property without a scale.
 */
export function deriveRates(counts: Counts, scales: Readonly<Record<string, readonly string[]>>): Rates {
  const strays = sumTally(counts.strays);
  const plots = counts.plots;
  const total = { count: plots, sum: counts.hundredths / 100, sumOfSquares: counts.hundredthsSquared / 1e4 };
  const perPlot = { count: plots, sum: strays, sumOfSquares: counts.straysSquared };
  return {
    plots,
    meanTotal: computeMeanInterval(total, { least: 0, most: 100, unseen: 100 }, "no plot"),
    detection: computeWilsonInterval(counts.found, counts.found + counts.overlooked, "no reference mark"),
    straysPerPlot: computeMeanInterval(
      perPlot,
      { least: 0, most: Math.max(1, strays), unseen: 1 },
      "no plot",
    ),
    strays: counts.strays,
    characteristics: listCharacteristicRates(counts),
    grades: Object.fromEntries(
      Object.entries(counts.grades).map(([property, own]) => {
        const scale = Object.hasOwn(scales, property) ? scales[property] : undefined;
        if (!scale) throw new RangeError(`deriveRates: no scale for ${property}`);
        return [property, deriveGradeRates(own, scale)];
      }),
    ),
    freeResponse: listConfidencePoints(counts),
  };
}
