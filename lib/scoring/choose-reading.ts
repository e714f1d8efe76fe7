/** Which reading of a plot counts, and which would fit better but earns nothing (SPEC 3). */

import type { DottingBurst } from "@/lib/plot/find-dotting";
import type { Rubric } from "@/lib/plot/rubric";
import { toTie } from "@/lib/scoring/assign-pairs";
import { type Bound, boundReadings } from "@/lib/scoring/bound-readings";
import { getDeduction, getPlotPoints, toHundredths } from "@/lib/scoring/count-points";
import { findCauses, type Stray } from "@/lib/scoring/find-causes";
import { listPairs } from "@/lib/scoring/list-pairs";
import { type Matching, matchMarks } from "@/lib/scoring/match-marks";
import { layPlot, type PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";
import { AS_DRAWN, compareReadings, listSearchReadings, type Reading } from "@/lib/scoring/reading";

/** A reading worked out in full. */
export interface Outcome {
  readonly reading: Reading;
  /** The plotted marks as the reading lays them on the reference. */
  readonly laid: readonly PlottedModel[];
  readonly matching: Matching;
  readonly strays: readonly Stray[];
  /** The total that it gives, in hundredths of a point. */
  readonly hundredths: number;
}

export interface WouldFit {
  readonly turnDeg: number;
  readonly mirrored: boolean;
  /** Points more than the counted reading. */
  readonly gain: number;
}

export interface ChosenReading {
  readonly counted: Outcome;
  readonly wouldFit: WouldFit | null;
}

export interface Question {
  readonly prepared: PreparedReference;
  readonly plotted: readonly PlottedModel[];
  readonly bursts: readonly DottingBurst[];
  readonly rubric: Rubric;
  /** The points of the grades, which no reading changes. */
  readonly gradePoints: number;
}

/** A total in hundredths; where marks earn no points, the share found stands in, so that the best reading still counts. */
function rank({ rubric, gradePoints }: Question, foundShare: number, deducted: number): number {
  if (rubric.shares.plot === 0) return toHundredths(100 * Math.max(0, foundShare - deducted));
  return toHundredths(getPlotPoints(foundShare, deducted, rubric) + gradePoints);
}

/** Works a reading out, or gives it up as soon as it cannot reach `needed` hundredths or lacks support. */
function readPlot(question: Question, reading: Reading, needed: number): Outcome | null {
  const { prepared, plotted, rubric } = question;
  const laid = layPlot(plotted, reading);
  const matching = matchMarks(prepared, laid, listPairs(prepared, laid, rubric), rubric);
  const isAsDrawn = compareReadings(reading, AS_DRAWN) === 0;
  if (!isAsDrawn && matching.support < rubric.turnSupport) return null;
  if (rank(question, matching.foundShare, 0) < needed) return null;
  const strays = findCauses(prepared, laid, matching, question.bursts, rubric);
  const { deducted } = getDeduction(strays, rubric);
  const hundredths = rank(question, matching.foundShare, deducted);
  return { reading, laid, matching, strays, hundredths };
}

/** The better of two outcomes: more points, then the order of readings. */
function isBetter(outcome: Outcome, best: Outcome): boolean {
  if (outcome.hundredths !== best.hundredths) return outcome.hundredths > best.hundredths;
  return compareReadings(outcome.reading, best.reading) < 0;
}

interface BoundedReading {
  readonly reading: Reading;
  /** The most hundredths that it can come to. */
  readonly most: number;
}

type GetBound = (reading: Reading) => Bound;

/** Whether a reading that earns nothing could beat so many hundredths by enough to be told of. */
function canBeTold(question: Question, hundredths: number): boolean {
  const { rubric } = question;
  return rubric.shares.plot > 0 && rank(question, 1, 0) >= getNeeded(rubric, hundredths);
}

/** The hundredths from which on a reading that earns nothing is told of. */
function getNeeded({ wouldFitGain }: Rubric, hundredths: number): number {
  return hundredths + Math.max(1, toHundredths(wouldFitGain));
}

/** The readings that can have the support and the hundredths they need, the most promising first. */
function boundAll(
  question: Question,
  getBound: GetBound,
  readings: readonly Reading[],
  needed: number,
): BoundedReading[] {
  return readings
    .flatMap((reading): BoundedReading[] => {
      const bound = getBound(reading);
      if (bound.support < question.rubric.turnSupport) return [];
      const most = rank(question, bound.foundShare, bound.deducted);
      return most < needed ? [] : [{ reading, most }];
    })
    .sort((a, b) => b.most - a.most || compareReadings(a.reading, b.reading));
}

/** The best reading among those that the rubric counts, the plot as drawn being one of them. */
function findCounted(question: Question, getBound: () => GetBound, asDrawn: Outcome): Outcome {
  const { prepared, rubric } = question;
  let best = asDrawn;
  const turns = rubric.orientation === "given" ? [] : prepared.turns.filter((turnDeg) => turnDeg !== 0);
  if (turns.length === 0 || best.hundredths >= rank(question, 1, 0)) return best;
  const readings = turns.map((turnDeg): Reading => ({ turnDeg, mirrored: false }));
  for (const { reading, most } of boundAll(question, getBound(), readings, best.hundredths)) {
    if (most < best.hundredths) break;
    const outcome = readPlot(question, reading, best.hundredths);
    if (outcome !== null && isBetter(outcome, best)) best = outcome;
  }
  return best;
}

/** The better of two outcomes to tell of: more points, then the closer fit, then the order of readings. */
function fitsBetter(outcome: Outcome, best: Outcome): boolean {
  const getSpread = ({ matching }: Outcome) =>
    matching.matched.reduce((sum, { distance }) => sum + toTie(distance), 0);
  if (outcome.hundredths !== best.hundredths) return outcome.hundredths > best.hundredths;
  const closer = getSpread(outcome) - getSpread(best);
  return closer === 0 ? compareReadings(outcome.reading, best.reading) < 0 : closer < 0;
}

/** The reading that would beat the counted one by the most, if by enough points to be told. */
function findWouldFit(question: Question, getBound: () => GetBound, counted: Outcome): WouldFit | null {
  const { prepared, rubric } = question;
  if (!canBeTold(question, counted.hundredths)) return null;
  const needed = getNeeded(rubric, counted.hundredths);
  let best: Outcome | null = null;
  for (const { reading, most } of boundAll(
    question,
    getBound(),
    listSearchReadings(prepared.turns),
    needed,
  )) {
    if (most < Math.max(needed, best?.hundredths ?? 0)) break;
    if (compareReadings(reading, AS_DRAWN) === 0) continue;
    const outcome = readPlot(question, reading, needed);
    if (outcome === null || outcome.hundredths < needed) continue;
    if (best === null || fitsBetter(outcome, best)) best = outcome;
  }
  if (best === null) return null;
  return { ...best.reading, gain: (best.hundredths - counted.hundredths) / 100 };
}

/** The reading that counts for a plot, worked out, and the one that would fit better, if any is worth telling of. */
export function chooseReading(question: Question): ChosenReading {
  const { prepared, plotted, rubric } = question;
  const asDrawn = readPlot(question, AS_DRAWN, 0);
  if (asDrawn === null) throw new Error("chooseReading: the plot as drawn always has a reading");
  // The counted reading has no fewer points than the plot as drawn, so this is never false where it is needed.
  const withMirrored = canBeTold(question, asDrawn.hundredths);
  let known: GetBound | undefined;
  const getBound = () => {
    known ??= boundReadings(prepared, plotted, withMirrored, rubric);
    return known;
  };
  const counted = findCounted(question, getBound, asDrawn);
  return { counted, wouldFit: findWouldFit(question, getBound, counted) };
}
