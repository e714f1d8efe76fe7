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
  const parent = new Map<number, number>();
  const findRoot = (node: number): number => {
    let root = node;
    for (let up = parent.get(root); up !== undefined && up !== root; up = parent.get(root)) root = up;
    for (let at = node; at !== root; ) {
      const up = parent.get(at) ?? root;
      parent.set(at, root);
      at = up;
    }
    return root;
  };
  // Plotted marks are kept apart from reference marks by odd and even numbers.
  for (const { reference, plotted } of edges) {
    const [a, b] = [2 * reference, 2 * plotted + 1];
    if (!parent.has(a)) parent.set(a, a);
    if (!parent.has(b)) parent.set(b, b);
    const [rootA, rootB] = [findRoot(a), findRoot(b)];
    if (rootA !== rootB) parent.set(rootB, rootA);
  }
  const groups = new Map<number, E[]>();
  for (const edge of edges) {
    const root = findRoot(2 * edge.reference);
    const group = groups.get(root);
    if (group === undefined) groups.set(root, [edge]);
    else group.push(edge);
  }
  return [...groups.values()];
}

function solveGroup<E extends Edge>(edges: readonly E[]): E[] {
  if (edges.length === 1) return [...edges];
  const references = [...new Set(edges.map((edge) => edge.reference))].sort((a, b) => a - b);
  const plotted = [...new Set(edges.map((edge) => edge.plotted))].sort((a, b) => a - b);
  const rowOf = new Map(references.map((index, row) => [index, row]));
  const columnOf = new Map(plotted.map((index, column) => [index, column]));
  const [rows, columns] = [references.length, plotted.length];
  const cost = new Float64Array(rows * columns);
  const tieCost = new Float64Array(rows * columns);
  const edgeAt = new Map<number, E>();
  for (const edge of edges) {
    const cell = (rowOf.get(edge.reference) as number) * columns + (columnOf.get(edge.plotted) as number);
    cost[cell] = -edge.gain;
    tieCost[cell] = edge.tie;
    edgeAt.set(cell, edge);
  }
  const assigned = assignMinimum({ rows, columns, cost, tieCost });
  return Array.from(assigned).flatMap((column, row) => edgeAt.get(row * columns + column) ?? []);
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
