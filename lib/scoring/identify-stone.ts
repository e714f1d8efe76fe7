/**
 * The hand-in check (SPEC 8.4 to 8.7): from a few features and a weight, which stone of the tray is in hand.
 *
 * `rankStones` asks how much of a stone was plotted, which is right for a whole plot. Here little is plotted on purpose,
 * so the question is turned round: how much of what was plotted does the stone have? A stone with many features is
 * not held against the two or three that were drawn.
 */

import { compareIds } from "@/lib/plot/compare-ids";
import type { Rubric } from "@/lib/plot/rubric";
import type { CheckOutcome, CheckRank, StoneEvidence, StoneVerdict } from "@/lib/plot/stone-check";
import { assignPairs, toGain, toTie } from "@/lib/scoring/assign-pairs";
import type { Candidate } from "@/lib/scoring/check-candidate";
import { findTellingFeatures } from "@/lib/scoring/find-telling-features";
import { listPairs, type Pair } from "@/lib/scoring/list-pairs";
import { layPlot, type PlottedModel, preparePlot } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";
import { layAlike } from "@/lib/scoring/reading";

/** Weights this close agree: the last digit of a scale that shows hundredths, and the label's rounding (own choice). */
const SAME_WEIGHT_CT = 0.01;
/** Weights this far apart are two stones, whatever was plotted (own choice). */
const OTHER_WEIGHT_CT = 0.04;
/** What a reading in another turn must gain to be believed: with two features some turn often fits by chance. */
const TURN_DOUBT = 0.1;
/** From here on a stone fits, and stands clear of the next (as for a swapped stone, scoring.md 8). */
const CLEAR = { fit: 0.6, margin: 0.25 };
const LIKELY = { fit: 0.4, margin: 0.1 };
/** Below this a stone fits nothing of what was plotted to speak of. */
const NO_FIT = 0.2;
const PLACED_LOCATION = 0.5;
const SLACK = 1e-9;

/** 1 for weights that agree, falling to 0; ct. Null where either is not known. */
export function rateWeight(reference: number | undefined, weighed: number | null): number | null {
  if (reference === undefined || weighed === null) return null;
  const apart = Math.abs(reference - weighed);
  const rated = (OTHER_WEIGHT_CT - apart) / (OTHER_WEIGHT_CT - SAME_WEIGHT_CT);
  return Math.max(0, Math.min(1, rated));
}

/** One feature each, so that the values add up to the most; every feature counts alike, optional ones too. */
function matchFeatures(prepared: PreparedReference, laid: readonly PlottedModel[], rubric: Rubric): Pair[] {
  const edges = listPairs(prepared, laid, rubric).map((pair) => ({
    reference: pair.reference,
    plotted: pair.plotted,
    gain: toGain(pair.value),
    tie: toTie(pair.distance),
    pair,
  }));
  return assignPairs(edges).map(({ pair }) => pair);
}

function fitStone(
  prepared: PreparedReference,
  plotted: readonly PlottedModel[],
  evidence: StoneEvidence,
  rubric: Rubric,
): Candidate {
  const weightFit = rateWeight(prepared.stone.weightCt, evidence.weightCt);
  let best = { marksFit: 0, turnDeg: 0, pairs: [] as Pair[] };
  for (const turnDeg of evidence.isHeldByLandmark ? [0] : prepared.turns) {
    const pairs = matchFeatures(prepared, layPlot(plotted, layAlike({ turnDeg, mirrored: false })), rubric);
    const share = pairs.reduce((sum, { value }) => sum + value, 0) / Math.max(1, plotted.length);
    const marksFit = Math.min(1, Math.max(0, share - (turnDeg === 0 ? 0 : TURN_DOUBT)));
    if (marksFit > best.marksFit + SLACK) best = { marksFit, turnDeg, pairs };
  }
  return {
    label: prepared.stoneId,
    fit: best.marksFit * (weightFit ?? 1),
    marksFit: best.marksFit,
    weightFit,
    placed: best.pairs.filter(({ location }) => location >= PLACED_LOCATION).length,
    turnDeg: best.turnDeg,
    prepared,
    seen: new Set(best.pairs.map(({ reference }) => reference)),
  };
}

/** Nothing fits: the label is doubted only where the weight does not speak for it and more than one feature was plotted. */
function judgeNoFit(own: CheckRank, features: number): CheckOutcome {
  if (own.weightFit === 0) return "none";
  return own.weightFit === null && features > 1 ? "none" : "unsure";
}

function judgeLabel(
  ranks: readonly CheckRank[],
  expected: string | null,
  features: number,
): CheckOutcome | null {
  if (expected === null) return null;
  const [best] = ranks;
  const own = ranks.find(({ label }) => label === expected);
  if (best === undefined || own === undefined) return "unsure";
  if (best.fit < NO_FIT) return judgeNoFit(own, features);
  if (own.weightFit === 0) return "other";
  if (own.fit >= best.fit - SLACK) return own.fit >= LIKELY.fit ? "fits" : "unsure";
  return best.fit >= CLEAR.fit - SLACK && best.fit - own.fit >= CLEAR.margin - SLACK ? "other" : "unsure";
}

function toCertainty(fit: number, margin: number): StoneVerdict["certainty"] {
  if (fit >= CLEAR.fit - SLACK && margin >= CLEAR.margin - SLACK) return "clear";
  return fit >= LIKELY.fit - SLACK && margin >= LIKELY.margin - SLACK ? "likely" : "open";
}

/** The weights of two stones, where a scale that was not used would tell them apart. */
function findWeighing(first: Candidate, second: Candidate, evidence: StoneEvidence) {
  const [a, b] = [first.prepared.stone.weightCt, second.prepared.stone.weightCt];
  if (evidence.weightCt !== null || a === undefined || b === undefined) return null;
  return Math.abs(a - b) >= OTHER_WEIGHT_CT ? ([a, b] as [number, number]) : null;
}

/**
 * Ranks the stones of a tray by how much of what was plotted each one has, times how well the weights agree. Only
 * stones of the evidence's cut are ranked; `stoneId` of each is its label. `expected` is what the label says. The
 * answer is an order and a margin, no probability. An empty tray, or one without this cut, ranks nothing. What a
 * reference lacks cannot be told: a feature that is in no reference counts against every stone alike.
 */
export function identifyStone(
  evidence: StoneEvidence,
  tray: readonly PreparedReference[],
  rubric: Rubric,
  expected: string | null,
): StoneVerdict {
  const plotted = preparePlot({ grades: {}, marks: evidence.marks });
  const candidates = tray
    .filter(({ stone }) => stone.cut === evidence.cut)
    .map((prepared) => fitStone(prepared, plotted, evidence, rubric))
    .sort((a, b) => b.fit - a.fit || b.marksFit - a.marksFit || compareIds(a.label, b.label));
  const [first, second] = candidates;
  const margin = first === undefined ? 0 : first.fit - (second?.fit ?? 0);
  const hasTwo = first !== undefined && second !== undefined;
  return {
    ranks: candidates.map(({ label, fit, marksFit, weightFit, placed, turnDeg }) => ({
      label,
      fit,
      marksFit,
      weightFit,
      placed,
      turnDeg,
    })),
    outcome: judgeLabel(candidates, expected, plotted.length),
    certainty: toCertainty(first?.fit ?? 0, margin),
    margin,
    telling: hasTwo ? findTellingFeatures(first, second, rubric) : [],
    weighing: hasTwo ? findWeighing(first, second, evidence) : null,
  };
}
