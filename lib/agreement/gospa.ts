import { solveAssignment } from "@/lib/agreement/solve-assignment";

/** What two set distances share: how far apart two things are, from where on that counts as a miss, and the order. */
export interface SetDistanceOptions<R, P> {
  readonly distance: (reference: R, plotted: P) => number;
  /** The distance c from which on a pair is no better than one overlooked and one stray; above 0. */
  readonly cutOff: number;
  /** The order p >= 1. */
  readonly order: number;
}

/** GOSPA and its parts; the parts are p-th powers and add up to the p-th power of the value. */
export interface Gospa {
  readonly value: number;
  readonly location: number;
  readonly overlooked: number;
  readonly strays: number;
  /** The pairs (place in reference, place in plotted) that are nearer than the cut-off. */
  readonly pairs: readonly (readonly [number, number])[];
}

/** Throws RangeError unless the cut-off is above 0 and the order at least 1. */
export function requireSetDistanceOptions(options: SetDistanceOptions<never, never>): void {
  if (!(options.cutOff > 0) || !(options.order >= 1)) {
    throw new RangeError(`set distance: cut-off ${options.cutOff}, order ${options.order}`);
  }
}

/**
 * The generalised optimal sub-pattern assignment distance with alpha = 2 (Rahmathullah, Garcia-Fernandez and Svensson
 * 2017, "Generalized optimal sub-pattern assignment metric", arXiv 1601.05585, definition 1 and proposition 1):
 * `(min over assignments of sum d^p + c^p / 2 (overlooked + strays))^(1/p)`. Not normalised. A pair exactly at the cut-off
 * is not paired; it costs the same either way. A duplicate is charged as a stray (check values 5.4, case F). Two empty
 * sets: 0. RangeError for a cut-off not above 0 or an order below 1 or infinite.
 */
export function computeGospa<R, P>(
  reference: readonly R[],
  plotted: readonly P[],
  options: SetDistanceOptions<R, P>,
): Gospa {
  requireSetDistanceOptions(options);
  const { distance, cutOff, order } = options;
  if (order === Number.POSITIVE_INFINITY) throw new RangeError("computeGospa: the order must be finite");
  const distances = reference.map((r) => plotted.map((p) => distance(r, p)));
  const costs = distances.map((row) => row.map((d) => Math.min(d, cutOff) ** order));
  const pairs = solveAssignment(costs).flatMap((column, row) =>
    column >= 0 && (distances[row]?.[column] ?? cutOff) < cutOff ? [[row, column] as const] : [],
  );
  const location = pairs.reduce((sum, [row, column]) => sum + (costs[row]?.[column] ?? 0), 0);
  const missed = (cutOff ** order / 2) * (reference.length - pairs.length);
  const strays = (cutOff ** order / 2) * (plotted.length - pairs.length);
  return { value: (location + missed + strays) ** (1 / order), location, overlooked: missed, strays, pairs };
}

/**
 * GOSPA as a share: 1 for equal sets, 0 where nothing matches (check values 5.4, this project's own normalisation):
 * `1 - GOSPA^p / (c^p / 2 (reference + plotted))`. Two empty sets are equal: 1. Throws as `computeGospa` does.
 */
export function computeGospaShare<R, P>(
  reference: readonly R[],
  plotted: readonly P[],
  options: SetDistanceOptions<R, P>,
): number {
  const { location, overlooked, strays } = computeGospa(reference, plotted, options);
  const marks = reference.length + plotted.length;
  if (marks === 0) return 1;
  return 1 - (location + overlooked + strays) / ((options.cutOff ** options.order / 2) * marks);
}
