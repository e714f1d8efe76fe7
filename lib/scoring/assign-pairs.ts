import { assignMinimum } from "@/lib/scoring/assign-minimum";

/** A pair that may be made: `gain` above 0, `tie` the less the better among equal gains; both whole numbers. */
export interface Edge {
  readonly reference: number;
  readonly plotted: number;
  readonly gain: number;
  readonly tie: number;
}

const QUANTA = 1e10;

/** A value as a whole number of quanta, so that sums are exact and ties are ties. Never 0 for a value above 0. */
export function toGain(value: number): number {
  return value > 0 ? Math.max(1, Math.round(value * QUANTA)) : 0;
}

/** A distance (girdle widths) as a whole number of nanowidths. */
export function toTie(distance: number): number {
  return Math.round(distance * 1e9);
}

/** Groups edges that share a mark, directly or through others. Each group is a problem of its own. */
function splitEdges<E extends Edge>(edges: readonly E[]): E[][] {
  let references = 0;
  let plotted = 0;
  for (const edge of edges) {
    references = Math.max(references, edge.reference + 1);
    plotted = Math.max(plotted, edge.plotted + 1);
  }
  const parent = new Int32Array(references + plotted);
  for (let node = 0; node < parent.length; node += 1) parent[node] = node;
  const findRoot = (node: number) => {
    let at = node;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at] as number] as number;
      at = parent[at] as number;
    }
    return at;
  };
  for (const edge of edges) parent[findRoot(references + edge.plotted)] = findRoot(edge.reference);
  const groupOf = new Map<number, E[]>();
  for (const edge of edges) {
    const root = findRoot(edge.reference);
    const group = groupOf.get(root);
    if (group === undefined) groupOf.set(root, [edge]);
    else group.push(edge);
  }
  return [...groupOf.values()];
}

/** Sorted without repeats. */
function listDistinct(indices: readonly number[]): number[] {
  return [...new Set(indices)].sort((a, b) => a - b);
}

/** More gain, then less of a tie, then the lower indices. */
function isBetterEdge(edge: Edge, best: Edge): boolean {
  if (edge.gain !== best.gain) return edge.gain > best.gain;
  if (edge.tie !== best.tie) return edge.tie < best.tie;
  return edge.reference === best.reference ? edge.plotted < best.plotted : edge.reference < best.reference;
}

/** The one edge to make of a group whose edges all meet in one mark; null for any other group. */
function findOnlyEdge<E extends Edge>(edges: readonly E[]): E | null {
  let best = edges[0] as E;
  const { reference, plotted } = best;
  let [isOneReference, isOnePlotted] = [true, true];
  for (const edge of edges) {
    isOneReference &&= edge.reference === reference;
    isOnePlotted &&= edge.plotted === plotted;
    if (!isOneReference && !isOnePlotted) return null;
    if (isBetterEdge(edge, best)) best = edge;
  }
  return best;
}

function solveGroup<E extends Edge>(edges: readonly E[]): readonly E[] {
  const only = findOnlyEdge(edges);
  if (only !== null) return [only];
  const references = listDistinct(edges.map((edge) => edge.reference));
  const plotted = listDistinct(edges.map((edge) => edge.plotted));
  const columns = plotted.length;
  const cost = new Float64Array(references.length * columns);
  const tieCost = new Float64Array(cost.length);
  const edgeAt: (E | undefined)[] = new Array(cost.length);
  for (const edge of edges) {
    const cell = references.indexOf(edge.reference) * columns + plotted.indexOf(edge.plotted);
    cost[cell] = -edge.gain;
    tieCost[cell] = edge.tie;
    edgeAt[cell] = edge;
  }
  const made: E[] = [];
  assignMinimum({ rows: references.length, columns, cost, tieCost }).forEach((column, row) => {
    const edge = column < 0 ? undefined : edgeAt[row * columns + column];
    if (edge !== undefined) made.push(edge);
  });
  return made;
}

/**
 * The edges to make so that no mark is used twice and the gains add up to the most that they can; among equal sums
 * the least sum of ties, then the lower indices. Exact. Ordered by reference mark. At most one edge for a pair of
 * marks may be given; no edges give none.
 */
export function assignPairs<E extends Edge>(edges: readonly E[]): E[] {
  return splitEdges(edges)
    .flatMap((group) => solveGroup(group))
    .sort((a, b) => a.reference - b.reference);
}
