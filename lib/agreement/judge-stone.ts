/** Why a stone is worth a look, from what a program's students made of it. The rules are this project's own choice. */
import type { Counts } from "@/lib/agreement/counts";
import { computePoissonTail } from "@/lib/agreement/poisson-tail";
import { isDefined, type Statistic } from "@/lib/agreement/statistic";
import { getCount } from "@/lib/agreement/tally";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";

export const STONE_RULES = {
  /** Fewer plots than this say nothing. */
  fewestPlots: 8,
  /** The interval of the share found must end this far below the program's share. */
  belowProgram: 0.1,
  /** So many times the program's strays on a plot, and less likely than this by chance over all stones. */
  timesProgram: 1.5,
  chance: 0.01,
} as const;

/** Causes by which a stone shows something that is not in it; the others come from how it was drawn or cleaned. */
const SEEMING = ["echo", "glint", "unexplained"] as const;

/** Strays at things that the stone shows and that are not in it. */
export function countSeeming({ strays }: Pick<Counts, "strays">): number {
  return SEEMING.reduce((sum, cause) => sum + getCount(strays, cause), 0);
}

export interface StoneGround {
  /** Share of reference marks found, and seeming strays on a plot, in the whole program. */
  readonly found: number;
  readonly seemingPerPlot: number;
  /** What the shares' intervals allow for: marks of one student are alike. */
  readonly designEffect: number;
  /** How many stones are judged. */
  readonly stones: number;
}

export interface StoneJudgement {
  readonly found: Statistic;
  readonly seemingPerPlot: number | null;
  readonly reasons: readonly string[];
}

const toPercent = (share: number) => `${Math.round(share * 100)} %`;

/**
 * A stone's share found, with Wilson's interval at the effective number of marks, and the reasons to look at it: found far
 * below the program's share, or more seeming strays than the program's rate makes likely (Poisson tail, Bonferroni over the
 * stones; plots are widened by the same design effect). Too few plots: no reason.
 */
export function judgeStone(counts: Counts, ground: StoneGround): StoneJudgement {
  const { designEffect } = ground;
  const marks = counts.found + counts.overlooked;
  const found = computeWilsonInterval(counts.found / designEffect, marks / designEffect, "no reference mark");
  const seeming = countSeeming(counts);
  if (counts.plots === 0) return { found, seemingPerPlot: null, reasons: [] };
  const perPlot = seeming / counts.plots;
  const reasons: string[] = [];
  const isEnough = counts.plots >= STONE_RULES.fewestPlots;
  if (isEnough && isDefined(found) && found.high < ground.found - STONE_RULES.belowProgram) {
    reasons.push(
      `${toPercent(found.value)} of its marks are found; of all stones' ${toPercent(ground.found)}.`,
    );
  }
  const expected = (ground.seemingPerPlot * counts.plots) / designEffect;
  const tail = computePoissonTail(Math.floor(seeming / designEffect), expected);
  const isMore = perPlot >= STONE_RULES.timesProgram * ground.seemingPerPlot;
  if (isEnough && isMore && tail * ground.stones < STONE_RULES.chance) {
    reasons.push(
      `${perPlot.toFixed(1)} echoes, glints and unexplained strays on a plot; of all stones ${ground.seemingPerPlot.toFixed(1)}.`,
    );
  }
  return { found, seemingPerPlot: perPlot, reasons };
}
