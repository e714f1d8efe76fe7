/**
 * How a simulated student works: the parameters of the error model of this folder.
 *
 * The model and all of its numbers are invented for the demo and for exercising the engine. They follow what
 * instructors commonly tell of beginners (common practice, no source) and were fitted to no data: nothing about real
 * students may be concluded from them.
 */
import type { SeededRandom } from "@/lib/base/seeded-random";

/** Chances are 0…1; lengths are girdle widths; `…PerPlot` are means of Poisson counts. */
export interface StudentSkill {
  /** Standard deviation of a mark's place along each axis. */
  readonly scatter: number;
  /** Standard deviation of ln(drawn size / true size). */
  readonly sizeScatter: number;
  /** How easily things are seen: added to the logit of detection. About 1 for a beginner, 3 for a trained eye. */
  readonly eye: number;
  /** Added to the logit for what is seen from the pavilion, which beginners look at less. */
  readonly pavilionCare: number;
  /** Chance that a thing seen is called by its own name; otherwise by one that it is like, seldom by any other. */
  readonly naming: number;
  /** Chance that an inside feature is drawn in both views, as if it were two. */
  readonly doubling: number;
  /** Chance that an inside feature is drawn in the other view alone. */
  readonly otherView: number;
  /** Chance that a long feature is drawn in pieces. */
  readonly fragments: number;
  /** Chance that small features close together are drawn as one cloud. */
  readonly merging: number;
  /** Chance that the stone is cleaned first, and of each mark that it was wiped over and stayed. */
  readonly wiping: number;
  readonly dustBurstsPerPlot: number;
  readonly dustDotsPerPlot: number;
  /** Reflected images drawn, for each inside feature that was seen. */
  readonly echoesPerFeature: number;
  readonly glintsPerPlot: number;
  /** Marks with nothing behind them. */
  readonly imaginedPerPlot: number;
  /** Chance to fall for a decoy of the reference. */
  readonly gullible: number;
  /** Chance that the stone is held turned by one of its own symmetry turns. */
  readonly turning: number;
  /** Chance that it is held half a facet off instead. */
  readonly halfFacetOff: number;
  /** Chance that the pavilion is drawn mirrored. */
  readonly mirroring: number;
  /** Mean error of the clarity grade in steps; positive is harsher. */
  readonly gradeBias: number;
  /** Standard deviation of the same. */
  readonly gradeScatter: number;
  /** Median time from one mark to the next, seconds. */
  readonly paceS: number;
  /** Chance of each mark that it is moved or taken back once. */
  readonly secondThoughts: number;
}

/** A beginner of the middling sort: what the cast of the demo departs from. */
export const MIDDLING_SKILL: StudentSkill = {
  scatter: 0.014,
  sizeScatter: 0.3,
  eye: 1.1,
  pavilionCare: -0.6,
  naming: 0.78,
  doubling: 0.06,
  otherView: 0.04,
  fragments: 0.12,
  merging: 0.3,
  wiping: 0.6,
  dustBurstsPerPlot: 0.15,
  dustDotsPerPlot: 0.5,
  echoesPerFeature: 0.15,
  glintsPerPlot: 0.15,
  imaginedPerPlot: 0.25,
  gullible: 0.2,
  turning: 0.12,
  halfFacetOff: 0.02,
  mirroring: 0.03,
  gradeBias: 0.2,
  gradeScatter: 0.7,
  paceS: 24,
  secondThoughts: 0.08,
};

const between = (random: SeededRandom, low: number, high: number) => low + (high - low) * random.next();

/** A student at random, from careful to hasty, for bulk simulation. */
export function drawStudentSkill(random: SeededRandom): StudentSkill {
  return {
    scatter: between(random, 0.006, 0.028),
    sizeScatter: between(random, 0.15, 0.5),
    eye: random.normal(1.2, 0.8),
    pavilionCare: between(random, -1.2, 0),
    naming: between(random, 0.6, 0.95),
    doubling: between(random, 0, 0.15),
    otherView: between(random, 0, 0.1),
    fragments: between(random, 0, 0.25),
    merging: between(random, 0, 0.6),
    wiping: between(random, 0.2, 1),
    dustBurstsPerPlot: between(random, 0, 0.5),
    dustDotsPerPlot: between(random, 0, 1.5),
    echoesPerFeature: between(random, 0, 0.4),
    glintsPerPlot: between(random, 0, 0.5),
    imaginedPerPlot: between(random, 0, 0.8),
    gullible: between(random, 0, 0.4),
    turning: 0.2,
    halfFacetOff: 0.03,
    mirroring: 0.04,
    gradeBias: random.normal(0.2, 0.6),
    gradeScatter: between(random, 0.3, 1),
    paceS: between(random, 12, 45),
    secondThoughts: between(random, 0, 0.2),
  };
}
