/** What a reading can find at most, cheaply: most readings need not be worked out in full. */
import type { View } from "@/lib/gem/point";
import type { Rubric } from "@/lib/plot/rubric";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";
import { LIKE_TYPE } from "@/lib/scoring/rate-pair";
import type { Laying, Reading } from "@/lib/scoring/reading";
import { SLACK, STEPS, startTally, sweepMark, type Tally, toStep } from "@/lib/scoring/sweep-turns";

/** What an outline drawn round several marks may find of each, whatever the turn. */
function boundMerges(
  prepared: PreparedReference,
  plotted: readonly PlottedModel[],
  merged: number,
): Float64Array {
  const bounds = new Float64Array(prepared.marks.length);
  for (const { mark, geometry } of plotted) {
    if (geometry.kind !== "outline") continue;
    const types = prepared.getTypes(mark.characteristic);
    const held: number[] = [];
    prepared.marks.forEach((model, index) => {
      if ((types[index] as number) < LIKE_TYPE || model.optional || model.mark.view !== mark.view) return;
      if (Math.abs(model.geometry.radius - geometry.radius) <= geometry.reach + SLACK) held.push(index);
    });
    if (held.length < 2) continue;
    for (const index of held) {
      const worth = (prepared.marks[index]?.weight ?? 0) * merged * (types[index] as number);
      if (worth > (bounds[index] as number)) bounds[index] = worth;
    }
  }
  return bounds;
}

/** What a reading can come to at most. */
export interface Bound {
  /** No less than `F`, 0…1. */
  readonly foundShare: number;
  /** No more than what the strays take off, 0…1. */
  readonly deducted: number;
  /** No less than the support of the reading. */
  readonly support: number;
}

/** The least that a stray can cost: any, and one that lies near no reference mark, so is no fragment and no double. */
function getLeastCharges(
  { decoys }: PreparedReference,
  { deductions }: Rubric,
): { any: number; far: number } {
  const { dust, echo, glint, unexplained } = deductions;
  const any = Math.min(...Object.values(deductions));
  return { any, far: decoys.length > 0 ? any : Math.min(dust, echo, glint, unexplained) };
}

const UNBOUNDED: Bound = { foundShare: 1, deducted: 0, support: Number.POSITIVE_INFINITY };

/** No less than the support of one view alone: neither more marks of it nor more reference marks can be in as many pairs. */
function boundSupport({ supports, alike, best }: Tally, step: number): number {
  const count = best.length / STEPS;
  let references = 0;
  for (let at = step * count; at < (step + 1) * count; at += 1) references += (supports[at] as number) >> 1;
  return Math.min(references, alike[step] as number);
}

/** What the sweep found, for every reading at a multiple of 7.5 degrees; others, and a side that was not swept, have no bound. */
export interface Bounds {
  readonly ofLaying: (laying: Laying) => Bound;
  /** No less than the marks of a view that support it where it is read alone, each by a reference mark of a like kind. */
  readonly ofSupportAlone: (view: View, reading: Reading) => number;
}

/**
 * Bounds for the readings of the plot as drawn and, `withMirrored`, mirrored, and for layings that read each view by one of its
 * own. Each reference mark gets the best that any plotted mark could give it; that a mark serves once only is left out of account.
 * Of the strays, those are counted that lie near nothing, and those that are too many.
 */
export function boundReadings(
  prepared: PreparedReference,
  plotted: readonly PlottedModel[],
  withMirrored: boolean,
  rubric: Rubric,
): Bounds {
  const merges = boundMerges(prepared, plotted, rubric.merged);
  const startSides = () => [startTally(merges), ...(withMirrored ? [startTally(merges)] : [])];
  const sides: Record<View, Tally[]> = { crown: startSides(), pavilion: startSides() };
  plotted.forEach((model, index) => {
    sweepMark(prepared, model, index + 1, rubric, sides[model.mark.view]);
  });
  return {
    ofLaying: createBound(prepared, plotted.length, sides, rubric),
    ofSupportAlone: (view, reading) => {
      const tally = sides[view][Number(reading.mirrored)];
      const step = toStep(reading);
      return tally === undefined || step === null ? Number.POSITIVE_INFINITY : boundSupport(tally, step);
    },
  };
}

function createBound(
  prepared: PreparedReference,
  plottedCount: number,
  sides: Readonly<Record<View, readonly Tally[]>>,
  rubric: Rubric,
): Bounds["ofLaying"] {
  const count = prepared.marks.length;
  const least = getLeastCharges(prepared, rubric);
  return ({ crown, pavilion }) => {
    const [a, b] = [sides.crown[Number(crown.mirrored)], sides.pavilion[Number(pavilion.mirrored)]];
    const [atCrown, atPavilion] = [toStep(crown), toStep(pavilion)];
    if (a === undefined || b === undefined || atCrown === null || atPavilion === null) return UNBOUNDED;
    let earned = 0;
    let support = 0;
    for (let i = 0; i < count; i += 1) {
      const [ia, ib] = [atCrown * count + i, atPavilion * count + i];
      earned += Math.max(a.best[ia] as number, b.best[ib] as number);
      support += ((a.supports[ia] as number) | (b.supports[ib] as number)) & 1;
    }
    const nearby = (a.nearby[atCrown] as number) + (b.nearby[atPavilion] as number);
    const charge = least.far * (plottedCount - nearby) + least.any * Math.max(0, nearby - count);
    return {
      foundShare: prepared.weightSum > 0 ? Math.min(1, earned / prepared.weightSum + SLACK) : 1,
      deducted: Math.max(0, Math.min(charge, rubric.deductionCap) / 100 - SLACK),
      support,
    };
  };
}
