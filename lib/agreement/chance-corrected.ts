import { computeT975 } from "@/lib/agreement/f-quantile";
import { type Estimate, isDefined, NORMAL_975, toUndefined } from "@/lib/agreement/statistic";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";

/** What a chance-corrected coefficient is made of. */
export interface ChanceCorrectedParts {
  /** Observed agreement, at most 1. */
  readonly observed: number;
  /** Agreement to be expected by chance. */
  readonly expected: number;
  /** The same for identity weights; equals `expected` where the coefficient is unweighted. */
  readonly expectedExact: number;
  /** Large-sample standard error of the coefficient. */
  readonly standardError: number;
  /** Units that the observed agreement is averaged over. */
  readonly units: number;
  /** "normal" for a z interval, else the degrees of freedom of a t interval. */
  readonly degrees: number | "normal";
}

/** The interval where the standard error is 0: Wilson's, for the observed agreement as a share of the units. */
function findIntervalWithoutError(parts: ChanceCorrectedParts): readonly [number, number] {
  const share = computeWilsonInterval(Math.min(parts.units, parts.observed * parts.units), parts.units);
  const expected = parts.observed > 1 - 1e-12 ? parts.expectedExact : parts.expected;
  const [low, high] = isDefined(share) ? [share.low, share.high] : [0, 1];
  return [(low - expected) / (1 - expected), (high - expected) / (1 - expected)];
}

/**
 * (observed - expected) / (1 - expected) with its 95 % interval, cut to [-1, 1].
 *
 * - expected = 1 (every rating names one and the same grade): 0/0, undefined, never 1 (check values 4.1, edge cases).
 * - one unit: nothing is known of the spread; the interval is the whole of [-1, 1].
 * - standard error 0 (all units agree, or all fail, alike): the large-sample formula would claim certainty from any
 *   number of units. The interval then is that of Wilson 1927 for the observed agreement as a share of the units, with
 *   chance agreement held at its observed value; where all agree, a unit that might not have is supposed to differ as
 *   far as units do by chance, so that the low end is the same for all weights. This project's own choice.
 */
export function toChanceCorrected(parts: ChanceCorrectedParts): Estimate {
  const { observed, expected, standardError, units, degrees } = parts;
  if (1 - expected < 1e-12) {
    return toUndefined("only one grade was given, so agreement cannot be told from chance");
  }
  const value = (observed - expected) / (1 - expected);
  const floor = Math.min(-1, value);
  if (units < 2) return { value, standardError: Number.NaN, low: floor, high: 1 };
  if (standardError < 1e-9 && observed >= 0) {
    const [low, high] = findIntervalWithoutError(parts);
    return { value, standardError, low: Math.max(floor, low), high: Math.min(1, high) };
  }
  const half = (degrees === "normal" ? NORMAL_975 : computeT975(degrees)) * standardError;
  return { value, standardError, low: Math.max(floor, value - half), high: Math.min(1, value + half) };
}
