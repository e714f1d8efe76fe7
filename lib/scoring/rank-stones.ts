/** Which stone of a tray a plot shows (SPEC 8): stones get swapped, and a few marks tell which one this is. */

import { compareIds } from "@/lib/plot/compare-ids";
import type { Plot } from "@/lib/plot/plots-file";
import type { Rubric } from "@/lib/plot/rubric";
import { boundReadings } from "@/lib/scoring/bound-readings";
import { comparePlaces } from "@/lib/scoring/compare-places";
import { listPairs } from "@/lib/scoring/list-pairs";
import { type Matching, matchMarks } from "@/lib/scoring/match-marks";
import { layPlot, type PlottedModel, preparePlot } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";
import { layAlike, type Reading } from "@/lib/scoring/reading";

/** Another stone is suspected from this F on (scoring.md 8) … */
const SUSPECT_SHARE = 0.6;
/** … where it reads better by this much. */
const SUSPECT_GAIN = 0.25;
const SLACK = 1e-9;

export interface StoneRank {
  readonly stoneId: string;
  /** The best `F` of the readings that the rubric allows on this stone, 0…1. */
  readonly foundShare: number;
  readonly turnDeg: number;
  /** How alike the places are, whatever the rubric, 0…1 (GOSPA). */
  readonly likeness: number;
}

interface BestShare {
  readonly foundShare: number;
  readonly turnDeg: number;
  readonly laid: readonly PlottedModel[];
  readonly matching: Matching | null;
}

/**
 * The best share of a stone's reference that a plot has in any reading allowed, or a share of 0 if it is less than `needed`. A stone
 * with nothing to find cannot be told by its marks: it shares nothing with a plot, and a plot without marks shares
 * nothing with any stone.
 */
function findBestShare(
  prepared: PreparedReference,
  plotted: readonly PlottedModel[],
  rubric: Rubric,
  needed: number,
): BestShare {
  let best: BestShare = { foundShare: 0, turnDeg: 0, laid: plotted, matching: null };
  if (prepared.weightSum === 0 || plotted.length === 0) return best;
  const bounds = boundReadings(prepared, plotted, false, rubric);
  for (const turnDeg of rubric.orientation === "given" ? [0] : prepared.turns) {
    const reading: Reading = { turnDeg, mirrored: false };
    const bound = bounds.ofLaying(layAlike(reading));
    if (bound.foundShare < needed || bound.foundShare <= best.foundShare) continue;
    if (turnDeg !== 0 && bound.support < rubric.turnSupport) continue;
    const laid = layPlot(plotted, layAlike(reading));
    const matching = matchMarks(prepared, laid, listPairs(prepared, laid, rubric), rubric);
    if (turnDeg !== 0 && matching.support < rubric.turnSupport) continue;
    if (matching.foundShare > best.foundShare + (best.matching === null ? 0 : SLACK)) {
      best = { foundShare: matching.foundShare, turnDeg, laid, matching };
    }
  }
  return best;
}

/**
 * The stones of a tray by how much of each one's reference a plot has, the best first; equal shares by likeness
 * of place, then by id. For a hand-in check: from a few marks, which stone is this? An empty tray gives an empty list.
 */
export function rankStones(plot: Plot, tray: readonly PreparedReference[], rubric: Rubric): StoneRank[] {
  const plotted = preparePlot(plot);
  return tray
    .map((prepared): StoneRank => {
      const { foundShare, turnDeg, laid, matching } = findBestShare(prepared, plotted, rubric, 0);
      const { likeness } = comparePlaces(prepared, laid, matching ?? { setAside: [] }, rubric);
      return { stoneId: prepared.stoneId, foundShare, turnDeg, likeness };
    })
    .sort(
      (a, b) => b.foundShare - a.foundShare || b.likeness - a.likeness || compareIds(a.stoneId, b.stoneId),
    );
}

/**
 * The other stone of the tray that a plot fits better by 25 points of F or more, at an F of 0.6 or more; of several
 * the one that it fits best, then the first by id. Null where there is none.
 */
export function findSuspectStone(
  own: PreparedReference,
  plotted: readonly PlottedModel[],
  tray: readonly PreparedReference[],
  rubric: Rubric,
): string | null {
  const others = tray.filter(({ stoneId }) => stoneId !== own.stoneId);
  if (others.length === 0 || plotted.length === 0) return null;
  const { foundShare } = findBestShare(own, plotted, rubric, 0);
  const needed = Math.max(SUSPECT_SHARE, foundShare + SUSPECT_GAIN) - SLACK;
  let suspect: { stoneId: string; foundShare: number } | null = null;
  if (needed > 1) return null;
  for (const other of [...others].sort((a, b) => compareIds(a.stoneId, b.stoneId))) {
    const share: number = findBestShare(
      other,
      plotted,
      rubric,
      Math.max(needed, suspect?.foundShare ?? 0),
    ).foundShare;
    if (share < needed || (suspect !== null && share <= suspect.foundShare + SLACK)) continue;
    suspect = { stoneId: other.stoneId, foundShare: share };
  }
  return suspect?.stoneId ?? null;
}
