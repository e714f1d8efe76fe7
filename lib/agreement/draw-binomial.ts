import { computeLogGamma } from "@/lib/agreement/incomplete-beta";
import type { SeededRandom } from "@/lib/base/seeded-random";

/** Below this mean the distribution is walked through from 0; above, the rejection method is the quicker one. */
const SMALL_MEAN = 10;

/** Inversion: walks up the distribution function (mean below SMALL_MEAN, so that (1 - p)^trials does not underflow). */
function drawByInversion(random: SeededRandom, trials: number, p: number): number {
  const odds = p / (1 - p);
  let probability = (1 - p) ** trials;
  let left = random.next();
  let hits = 0;
  while (left > probability && hits < trials) {
    left -= probability;
    hits += 1;
    probability *= (odds * (trials - hits + 1)) / hits;
  }
  return hits;
}

/** Transformed rejection with squeeze, p <= 1/2, mean at least SMALL_MEAN. */
function drawByRejection(random: SeededRandom, trials: number, p: number): number {
  const spread = Math.sqrt(trials * p * (1 - p));
  const b = 1.15 + 2.53 * spread;
  const a = -0.0873 + 0.0248 * b + 0.01 * p;
  const centre = trials * p + 0.5;
  const alpha = (2.83 + 5.1 / b) * spread;
  const mode = Math.floor((trials + 1) * p);
  const atMode = computeLogGamma(mode + 1) + computeLogGamma(trials - mode + 1);
  for (;;) {
    const u = random.next() - 0.5;
    const v = random.next();
    const edge = 0.5 - Math.abs(u);
    const hits = Math.floor(((2 * a) / edge + b) * u + centre);
    if (edge >= 0.07 && v <= 0.92 - 4.2 / b) return hits;
    if (hits < 0 || hits > trials) continue;
    const bound =
      atMode -
      computeLogGamma(hits + 1) -
      computeLogGamma(trials - hits + 1) +
      (hits - mode) * Math.log(p / (1 - p));
    if (Math.log((v * alpha) / (a / (edge * edge) + b)) <= bound) return hits;
  }
}

/**
 * A binomial variate: hits in `trials` with probability `p` each; exact, by inversion for small means and by transformed
 * rejection (Hormann 1993, J. Stat. Comput. Simul. 46, 101-110, algorithm BTRS, constants from memory, tested against the
 * exact distribution) otherwise. No trials: 0. `p` is cut to [0, 1].
 */
export function drawBinomial(random: SeededRandom, trials: number, p: number): number {
  if (trials <= 0 || p <= 0) return 0;
  if (p >= 1) return trials;
  if (p > 0.5) return trials - drawBinomial(random, trials, 1 - p);
  return trials * p < SMALL_MEAN ? drawByInversion(random, trials, p) : drawByRejection(random, trials, p);
}
