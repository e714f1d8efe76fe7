/** Within one reading: which plotted mark is which reference mark (SPEC 4). */
import type { Rubric } from "@/lib/plot/rubric";
import { assignPairs, toGain, toTie } from "@/lib/scoring/assign-pairs";
import { assignWithMerges, type Merge } from "@/lib/scoring/find-merges";
import type { MayPair, Pair } from "@/lib/scoring/list-pairs";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";

export interface Matching {
  /** One plotted mark for one reference mark, ordered by reference mark. */
  readonly matched: readonly Pair[];
  /** Reference marks found by an outline round several, ordered by reference mark. */
  readonly merges: readonly Merge[];
  /** Plotted marks set against optional reference marks. */
  readonly setAside: readonly Pair[];
  /** Plotted marks that nothing accounts for, ascending. */
  readonly leftover: readonly number[];
  /** `F` of scoring.md 6: the share of the reference that was found, 0…1; 1 where nothing counts. */
  readonly foundShare: number;
  /** Reference marks found, or accounted for, with a location of 0.5 or better: what a turn rests on. */
  readonly support: number;
}

/** A location that supports a turn (scoring.md 3). */
export const SUPPORTING_LOCATION = 0.5;

/** `F` of what was found; 1 where no reference mark counts. */
export function getFoundShare(
  { marks, weightSum }: PreparedReference,
  found: readonly { readonly reference: number; readonly value: number }[],
): number {
  if (weightSum <= 0) return 1;
  const earned = found.reduce(
    (sum, { reference, value }) => sum + (marks[reference]?.weight ?? 0) * value,
    0,
  );
  return Math.min(1, earned / weightSum);
}

/**
 * The assignment that gives the most (SPEC 4.1), merges (4.4) and optional marks (4.5). No pairs give an empty
 * matching with every plotted mark left over. Of the pairs that `mayPair` refuses none must be given; merges ask it as well.
 */
export function matchMarks(
  prepared: PreparedReference,
  laid: readonly PlottedModel[],
  pairs: readonly Pair[],
  rubric: Rubric,
  mayPair: MayPair = () => true,
): Matching {
  const isOptional = ({ reference }: Pair) => prepared.marks[reference]?.optional === true;
  const weightOf = (reference: number) => prepared.marks[reference]?.weight ?? 0;
  const toEdge = (pair: Pair, weight: number) => ({
    reference: pair.reference,
    plotted: pair.plotted,
    gain: toGain(weight * pair.value),
    tie: toTie(pair.distance),
    pair,
  });
  const optional = pairs.filter(isOptional);
  const edges = pairs
    .filter((pair) => !isOptional(pair))
    .map((pair) => toEdge(pair, weightOf(pair.reference)));
  const barred = new Set(optional.map(({ plotted }) => plotted));
  const { made, merges: chosen } = assignWithMerges(prepared, laid, edges, barred, rubric, mayPair);
  const matched = made.map(({ pair }) => pair);
  const merges = chosen.map((merge) => ({ ...merge, value: rubric.merged * merge.type }));
  const used = new Set([...matched, ...merges].map(({ plotted }) => plotted));
  const setAside = assignPairs(
    optional.filter(({ plotted }) => !used.has(plotted)).map((pair) => toEdge(pair, 1)),
  ).map(({ pair }) => pair);
  for (const { plotted } of setAside) used.add(plotted);
  return {
    matched,
    merges,
    setAside,
    leftover: laid.map((_, index) => index).filter((index) => !used.has(index)),
    foundShare: getFoundShare(prepared, [...matched, ...merges]),
    support: [...matched, ...setAside].filter(({ location }) => location >= SUPPORTING_LOCATION).length,
  };
}
