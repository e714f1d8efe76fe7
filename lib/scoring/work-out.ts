/** One reading of a plot, worked out in full, and what it has to come to (SPEC 3). */
import type { View } from "@/lib/gem/point";
import type { DottingBurst } from "@/lib/plot/find-dotting";
import type { Rubric } from "@/lib/plot/rubric";
import { toTie } from "@/lib/scoring/assign-pairs";
import type { Bound } from "@/lib/scoring/bound-readings";
import { getDeduction, getPlotPoints, toHundredths } from "@/lib/scoring/count-points";
import { findCauses, type Stray } from "@/lib/scoring/find-causes";
import { listPairs } from "@/lib/scoring/list-pairs";
import { type Matching, matchMarks, SUPPORTING_LOCATION } from "@/lib/scoring/match-marks";
import { layPlot, type PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";
import { LIKE_TYPE } from "@/lib/scoring/rate-pair";
import { AS_DRAWN, compareReadings, type Laying, layAlike, type Reading } from "@/lib/scoring/reading";

/** What is asked of a plot. */
export interface Question {
  readonly prepared: PreparedReference;
  readonly plotted: readonly PlottedModel[];
  readonly bursts: readonly DottingBurst[];
  readonly rubric: Rubric;
  /** The points of the grades, which no reading changes. */
  readonly gradePoints: number;
}

/** A reading, of the plot or of one view of it alone, worked out in full. */
export interface Outcome {
  readonly reading: Reading;
  /** The plotted marks as the reading lays them on the reference. */
  readonly laid: readonly PlottedModel[];
  readonly matching: Matching;
  readonly strays: readonly Stray[];
  /** The total that it gives, in hundredths of a point. */
  readonly hundredths: number;
}

/** A reading that is looked into: of the whole plot, or of one view where the other stays as it is. */
export interface Trial {
  readonly reading: Reading;
  readonly laying: Laying;
  /** The one view that it reads. */
  readonly view?: View;
  /** How many reference marks it must find well (SPEC 3.3, 3.5). */
  readonly support: number;
}

export interface BoundedTrial {
  readonly trial: Trial;
  /** The most hundredths that it can come to. */
  readonly most: number;
}

/** A reading of the whole plot. The plot as drawn needs no support. */
export function toTrial(reading: Reading, { turnSupport }: Rubric): Trial {
  const isAsDrawn = compareReadings(reading, AS_DRAWN) === 0;
  return { reading, laying: layAlike(reading), support: isAsDrawn ? 0 : turnSupport };
}

/** A total in hundredths; where marks earn no points, the share found stands in, so that the best reading still counts. */
export function rank({ rubric, gradePoints }: Question, foundShare: number, deducted: number): number {
  if (rubric.shares.plot === 0) return toHundredths(100 * Math.max(0, foundShare - deducted));
  return toHundredths(getPlotPoints(foundShare, deducted, rubric) + gradePoints);
}

/** How many marks support a trial: of a view that is read alone, its own, where they are of a like kind (SPEC 3.3, 3.5). */
function getSupport({ view }: Trial, laid: readonly PlottedModel[], matching: Matching): number {
  if (view === undefined) return matching.support;
  return [...matching.matched, ...matching.setAside].filter(
    ({ plotted, location, type }) =>
      location >= SUPPORTING_LOCATION && type >= LIKE_TYPE && laid[plotted]?.mark.view === view,
  ).length;
}

/** Works a trial out, or gives it up as soon as it cannot reach `needed` hundredths or lacks support. */
export function workOut(question: Question, trial: Trial, needed: number): Outcome | null {
  const { prepared, plotted, rubric } = question;
  const { reading, laying } = trial;
  const laid = layPlot(plotted, laying);
  const matching = matchMarks(prepared, laid, listPairs(prepared, laid, rubric), rubric);
  if (getSupport(trial, laid, matching) < trial.support) return null;
  if (rank(question, matching.foundShare, 0) < needed) return null;
  const strays = findCauses(prepared, laid, matching, question.bursts, rubric);
  const { deducted } = getDeduction(strays, rubric);
  const hundredths = rank(question, matching.foundShare, deducted);
  return { reading, laid, matching, strays, hundredths };
}

/** The hundredths from which on a reading that earns nothing is told of: half the gain for one view, which is half a plot. */
export function getNeeded({ wouldFitGain }: Rubric, hundredths: number, isOneView = false): number {
  return hundredths + Math.max(1, toHundredths(isOneView ? wouldFitGain / 2 : wouldFitGain));
}

/** Whether a reading that earns nothing could beat so many hundredths by enough to be told of. */
export function canBeTold(question: Question, hundredths: number, isOneView = false): boolean {
  const { rubric } = question;
  return rubric.shares.plot > 0 && rank(question, 1, 0) >= getNeeded(rubric, hundredths, isOneView);
}

/** The trials that can have the support and the hundredths they need, the most promising first. */
export function boundAll(
  question: Question,
  getBound: (laying: Laying) => Bound,
  trials: readonly Trial[],
  needed: number,
): BoundedTrial[] {
  return trials
    .flatMap((trial): BoundedTrial[] => {
      const bound = getBound(trial.laying);
      if (bound.support < trial.support) return [];
      const most = rank(question, bound.foundShare, bound.deducted);
      return most < needed ? [] : [{ trial, most }];
    })
    .sort((a, b) => b.most - a.most || compareReadings(a.trial.reading, b.trial.reading));
}

/** The better of two outcomes to tell of: more points, then the closer fit, then the order of readings. */
function fitsBetter(outcome: Outcome, best: Outcome): boolean {
  const getSpread = ({ matching }: Outcome) =>
    matching.matched.reduce((sum, { distance }) => sum + toTie(distance), 0);
  if (outcome.hundredths !== best.hundredths) return outcome.hundredths > best.hundredths;
  const closer = getSpread(outcome) - getSpread(best);
  return closer === 0 ? compareReadings(outcome.reading, best.reading) < 0 : closer < 0;
}

/** Of bounded trials, the most promising first, the best to tell of that reaches `needed`; null where none does. */
export function findBestFit(
  question: Question,
  bounded: readonly BoundedTrial[],
  needed: number,
): { readonly trial: Trial; readonly outcome: Outcome } | null {
  let best: { trial: Trial; outcome: Outcome } | null = null;
  for (const { trial, most } of bounded) {
    if (most < Math.max(needed, best?.outcome.hundredths ?? 0)) break;
    const outcome = workOut(question, trial, needed);
    if (outcome === null || outcome.hundredths < needed) continue;
    if (best === null || fitsBetter(outcome, best.outcome)) best = { trial, outcome };
  }
  return best;
}
