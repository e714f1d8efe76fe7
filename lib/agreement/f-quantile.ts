import { computeIncompleteBeta } from "@/lib/agreement/incomplete-beta";

/**
 * The quantile of the F distribution: the f with P(F <= f) = probability, for `numerator` and `denominator` degrees of
 * freedom (fractions allowed). The distribution function is I_x(d1/2, d2/2) with x = d1 f / (d1 f + d2)
 * (Abramowitz and Stegun 1964, 26.6.2); inverted by bisection on log f. RangeError unless 0 < probability < 1 and both
 * degrees of freedom are positive.
 */
export function computeFQuantile(probability: number, numerator: number, denominator: number): number {
  if (!(probability > 0 && probability < 1) || !(numerator > 0) || !(denominator > 0)) {
    throw new RangeError(`computeFQuantile: (${probability}, ${numerator}, ${denominator}) is out of range`);
  }
  const distribution = (f: number) => {
    const ratio = (numerator * f) / denominator;
    return computeIncompleteBeta(ratio / (1 + ratio), numerator / 2, denominator / 2);
  };
  let low = -700;
  let high = 700;
  for (let i = 0; i < 200 && high - low > 1e-14 * Math.max(1, Math.abs(low)); i += 1) {
    const middle = (low + high) / 2;
    if (distribution(Math.exp(middle)) < probability) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

/**
 * The 0.975 quantile of Student's t with the given degrees of freedom: the root of the 0.95 quantile of
 * F(1, degrees), since t squared is F. RangeError unless degrees > 0.
 */
export function computeT975(degrees: number): number {
  return Math.sqrt(computeFQuantile(0.95, 1, degrees));
}
