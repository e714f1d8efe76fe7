/** Which reading of a plot counts, and which would fit better but earns nothing (SPEC 3). */
import { VIEWS } from "@/lib/gem/point";
import type { ViewFit } from "@/lib/plot/score-result";
import { type Bounds, boundReadings } from "@/lib/scoring/bound-readings";
import { AS_DRAWN, compareReadings, layAlike, listSearchReadings, type Reading } from "@/lib/scoring/reading";
import {
  boundAll,
  canBeTold,
  findBestFit,
  getNeeded,
  type Outcome,
  type Question,
  rank,
  type Trial,
  toTrial,
  workOut,
} from "@/lib/scoring/work-out";

export interface WouldFit {
  readonly turnDeg: number;
  readonly mirrored: boolean;
  /** Points more than the counted reading. */
  readonly gain: number;
}

export interface ChosenReading {
  readonly counted: Outcome;
  readonly wouldFit: WouldFit | null;
  /** Null where `wouldFit` has said it of the whole plot. */
  readonly viewFit: ViewFit | null;
}

/** The better of two outcomes: more points, then the order of readings. */
function isBetter(outcome: Outcome, best: Outcome): boolean {
  if (outcome.hundredths !== best.hundredths) return outcome.hundredths > best.hundredths;
  return compareReadings(outcome.reading, best.reading) < 0;
}

/** The best reading among those that the rubric counts, the plot as drawn being one of them. */
function findCounted(question: Question, getBounds: () => Bounds, asDrawn: Outcome): Outcome {
  const { prepared, rubric } = question;
  let best = asDrawn;
  const turns = rubric.orientation === "given" ? [] : prepared.turns.filter((turnDeg) => turnDeg !== 0);
  if (turns.length === 0 || best.hundredths >= rank(question, 1, 0)) return best;
  const trials = turns.map((turnDeg) => toTrial({ turnDeg, mirrored: false }, rubric));
  for (const { trial, most } of boundAll(question, getBounds().ofLaying, trials, best.hundredths)) {
    if (most < best.hundredths) break;
    const outcome = workOut(question, trial, best.hundredths);
    if (outcome !== null && isBetter(outcome, best)) best = outcome;
  }
  return best;
}

function toGain(outcome: Outcome, counted: Outcome): number {
  return (outcome.hundredths - counted.hundredths) / 100;
}

/** The reading of the whole plot that would beat the counted one by the most, if by enough points to be told. */
function findWouldFit(question: Question, getBounds: () => Bounds, counted: Outcome): WouldFit | null {
  const { prepared, rubric } = question;
  if (!canBeTold(question, counted.hundredths)) return null;
  const needed = getNeeded(rubric, counted.hundredths);
  const trials = listSearchReadings(prepared.turns)
    .filter((reading) => compareReadings(reading, AS_DRAWN) !== 0)
    .map((reading) => toTrial(reading, rubric));
  const best = findBestFit(question, boundAll(question, getBounds().ofLaying, trials, needed), needed);
  return best && { ...best.outcome.reading, gain: toGain(best.outcome, counted) };
}

/** What supports a view that is mirrored and no more: of such readings there is one, so that chance has little to choose from. */
const MIRRORED_SUPPORT = 2;

/** A view that is turned by less than this against the other was held alike and drawn a little askew. */
const LEAST_APART_DEG = 15;

function isHeldAlike(own: Reading, counted: Reading): boolean {
  const apart = Math.abs(own.turnDeg - counted.turnDeg) % 360;
  return own.mirrored === counted.mirrored && Math.min(apart, 360 - apart) < LEAST_APART_DEG;
}

/**
 * Readings of one view alone, where the other view has marks to stay. At least half of the view's marks must support it, by kind
 * as well as by place: on a crowded stone a few lie near something in any reading.
 */
function listViewTrials(question: Question, { reading }: Outcome, bounds: Bounds): Trial[] {
  const { prepared, plotted, rubric } = question;
  return VIEWS.flatMap((view): Trial[] => {
    const count = plotted.filter(({ mark }) => mark.view === view).length;
    if (count === plotted.length) return [];
    return listSearchReadings(prepared.turns).flatMap((own): Trial[] => {
      if (isHeldAlike(own, reading)) return [];
      const isMirrorOnly = own.mirrored && own.turnDeg === reading.turnDeg;
      const least = isMirrorOnly ? Math.min(MIRRORED_SUPPORT, rubric.turnSupport) : rubric.turnSupport;
      const support = Math.max(least, Math.ceil(count / 2));
      return support > count || bounds.ofSupportAlone(view, own) < support
        ? []
        : [{ reading: own, view, support, laying: { ...layAlike(reading), [view]: own } }];
    });
  });
}

/** The reading of one view alone that would beat the counted one by the most, if by enough points to be told. */
function findViewFit(question: Question, getBounds: () => Bounds, counted: Outcome): ViewFit | null {
  if (!canBeTold(question, counted.hundredths, true)) return null;
  const needed = getNeeded(question.rubric, counted.hundredths, true);
  const trials = listViewTrials(question, counted, getBounds());
  if (trials.length === 0) return null;
  const best = findBestFit(question, boundAll(question, getBounds().ofLaying, trials, needed), needed);
  if (best?.trial.view === undefined) return null;
  return { view: best.trial.view, ...best.outcome.reading, gain: toGain(best.outcome, counted) };
}

/** The reading that counts for a plot, worked out, and the one that would fit better, if any is worth telling of. */
export function chooseReading(question: Question): ChosenReading {
  const { prepared, plotted, rubric } = question;
  const asDrawn = workOut(question, toTrial(AS_DRAWN, rubric), 0);
  if (asDrawn === null) throw new Error("chooseReading: the plot as drawn always has a reading");
  // The counted reading has no fewer points than the plot as drawn, so this is never false where it is needed.
  const withMirrored = canBeTold(question, asDrawn.hundredths, true);
  let known: Bounds | undefined;
  const getBounds = () => {
    known ??= boundReadings(prepared, plotted, withMirrored, rubric);
    return known;
  };
  const counted = findCounted(question, getBounds, asDrawn);
  const wouldFit = findWouldFit(question, getBounds, counted);
  const viewFit = wouldFit === null ? findViewFit(question, getBounds, counted) : null;
  return { counted, wouldFit, viewFit };
}
