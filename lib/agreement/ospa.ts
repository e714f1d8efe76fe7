import { requireSetDistanceOptions, type SetDistanceOptions } from "@/lib/agreement/gospa";
import { solveAssignment } from "@/lib/agreement/solve-assignment";

/** The least possible largest cost of a full assignment of the smaller side. */
function computeBottleneck(costs: readonly (readonly number[])[]): number {
  const levels = [...new Set(costs.flat())].sort((a, b) => a - b);
  const isEnough = (level: number) => {
    const tooFar = costs.map((row) => row.map((cost) => (cost > level ? 1 : 0)));
    return solveAssignment(tooFar).every((column, row) => column < 0 || tooFar[row]?.[column] === 0);
  };
  let low = 0;
  let high = levels.length - 1;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (isEnough(levels[middle] ?? 0)) high = middle;
    else low = middle + 1;
  }
  return levels[low] ?? 0;
}

/**
 * The optimal sub-pattern assignment distance (Schuhmacher, Vo and Vo 2008, IEEE Trans. Signal Process. 56, 3447-3457,
 * section III): the mean, over the larger set of n, of the best assignment's distances cut off at c and of c for each
 * of the n - m left over, as a mean of order p; for infinite p the largest of them. Never above c. Two empty sets: 0; one
 * empty set: c, whatever the size of the other. RangeError for a cut-off not above 0 or an order below 1.
 */
export function computeOspa<R, P>(
  reference: readonly R[],
  plotted: readonly P[],
  options: SetDistanceOptions<R, P>,
): number {
  requireSetDistanceOptions(options);
  const { distance, cutOff, order } = options;
  const larger = Math.max(reference.length, plotted.length);
  const smaller = Math.min(reference.length, plotted.length);
  if (larger === 0) return 0;
  if (smaller === 0) return cutOff;
  const cut = reference.map((r) => plotted.map((p) => Math.min(distance(r, p), cutOff)));
  if (order === Number.POSITIVE_INFINITY) return larger > smaller ? cutOff : computeBottleneck(cut);
  const costs = cut.map((row) => row.map((d) => d ** order));
  const assigned = solveAssignment(costs).reduce((sum, column, row) => sum + (costs[row]?.[column] ?? 0), 0);
  return ((assigned + cutOff ** order * (larger - smaller)) / larger) ** (1 / order);
}
