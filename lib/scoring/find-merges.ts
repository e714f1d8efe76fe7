/** Outlines that were drawn round several reference marks at once (SPEC 4.4). */
import type { Rubric } from "@/lib/plot/rubric";
import { assignPairs, type Edge, toGain } from "@/lib/scoring/assign-pairs";
import type { MayPair } from "@/lib/scoring/list-pairs";
import type { MarkGeometry } from "@/lib/scoring/mark-geometry";
import { getPointDistance } from "@/lib/scoring/measure-distance";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";
import { LIKE_TYPE } from "@/lib/scoring/rate-pair";

/** A reference mark found by an outline round it and others. */
export interface Merge {
  readonly reference: number;
  readonly plotted: number;
  readonly type: number;
  readonly value: number;
}

interface Round {
  readonly plotted: number;
  /** What the outline can find, by reference index, with the gain of each. */
  readonly finds: ReadonlyMap<number, { readonly type: number; readonly gain: number }>;
}

export interface MergeChoice<E extends Edge> {
  readonly made: readonly E[];
  readonly merges: readonly { readonly reference: number; readonly plotted: number; readonly type: number }[];
}

const ON_THE_LINE = 1e-9;
/** How many outlines are tried, and how many pairs of their marks are forced, before the search is cut short. */
const MOST_ROUNDS = 12;
const MOST_FORCED = 6;

function isEnclosed(outline: MarkGeometry, { centreX, centreY, samples }: MarkGeometry): boolean {
  const [dx, dy, reach] = [centreX - outline.centreX, centreY - outline.centreY, outline.reach + ON_THE_LINE];
  if (dx * dx + dy * dy > reach * reach) return false;
  for (let i = 0; i < samples.length; i += 2) {
    if (getPointDistance(outline, samples[i] as number, samples[i + 1] as number) > ON_THE_LINE) return false;
  }
  return true;
}

/** The outlines that enclose two or more marks that they may be taken for, the most rewarding first. */
function listRounds(
  prepared: PreparedReference,
  laid: readonly PlottedModel[],
  barred: ReadonlySet<number>,
  rubric: Rubric,
  mayPair: MayPair,
): Round[] {
  if (rubric.merged === 0) return [];
  const rounds = laid.flatMap(({ mark, geometry }, plotted): Round[] => {
    if (geometry.kind !== "outline" || barred.has(plotted)) return [];
    const types = prepared.getTypes(mark.characteristic);
    const finds = new Map<number, { type: number; gain: number }>();
    prepared.marks.forEach((reference, index) => {
      const type = types[index] as number;
      if (reference.optional || reference.mark.view !== mark.view || type < LIKE_TYPE) return;
      if (!mayPair(index, plotted)) return;
      if (!isEnclosed(geometry, reference.geometry)) return;
      finds.set(index, { type, gain: toGain(reference.weight * rubric.merged * type) });
    });
    return finds.size >= 2 ? [{ plotted, finds }] : [];
  });
  const worth = ({ finds }: Round) => [...finds.values()].reduce((sum, { gain }) => sum + gain, 0);
  return rounds.sort((a, b) => worth(b) - worth(a) || a.plotted - b.plotted).slice(0, MOST_ROUNDS);
}

interface Trial<E extends Edge> extends MergeChoice<E> {
  readonly total: number;
  readonly isValid: boolean;
}

/** The best assignment where the chosen outlines stand aside and the forced marks are left to them. */
function tryRounds<E extends Edge>(
  edges: readonly E[],
  chosen: readonly Round[],
  forced: readonly number[],
): Trial<E> {
  const owner = new Map<number, { round: Round; type: number; gain: number }>();
  for (const round of chosen) {
    for (const [reference, find] of round.finds) {
      const known = owner.get(reference);
      if (known === undefined || find.gain > known.gain) owner.set(reference, { round, ...find });
    }
  }
  const aside = new Set(chosen.map(({ plotted }) => plotted));
  const reduced = edges.flatMap((edge) => {
    if (aside.has(edge.plotted) || forced.includes(edge.reference)) return [];
    const gain = edge.gain - (owner.get(edge.reference)?.gain ?? 0);
    const { reference, plotted, tie } = edge;
    return gain > 0 ? [{ reference, plotted, gain, tie, edge }] : [];
  });
  const assigned = assignPairs(reduced);
  const used = new Set(assigned.map(({ reference }) => reference));
  const counts = new Map<Round, number>(chosen.map((round) => [round, 0]));
  const merges: MergeChoice<E>["merges"][number][] = [];
  let total = assigned.reduce((sum, { edge }) => sum + edge.gain, 0);
  for (const [reference, { round, type, gain }] of [...owner].sort(([a], [b]) => a - b)) {
    if (used.has(reference)) continue;
    counts.set(round, (counts.get(round) ?? 0) + 1);
    merges.push({ reference, plotted: round.plotted, type });
    total += gain;
  }
  const isValid = [...counts.values()].every((count) => count >= 2);
  return { made: assigned.map(({ edge }) => edge), merges, total, isValid };
}

/** Pairs of an outline's marks that may be left to it although they could be matched, the cheapest first. */
function listForcedPairs<E extends Edge>(round: Round, made: readonly E[]): [number, number][] {
  const lost = new Map(made.map(({ reference, gain }) => [reference, gain]));
  const cheapest = [...round.finds.keys()]
    .sort((a, b) => (lost.get(a) ?? 0) - (lost.get(b) ?? 0) || a - b)
    .slice(0, MOST_FORCED);
  return cheapest.flatMap((a, i) => cheapest.slice(i + 1).map((b): [number, number] => [a, b]));
}

/**
 * The assignment with the outlines that give the most when they are read as drawn round several marks. `barred`
 * marks never merge: those that an optional reference mark accounts for. A chosen outline finds at least two marks.
 * Exact for one outline that encloses up to six marks; for more the search adds the outline that gains the most, one at a
 * time, and stops after a fixed amount of work.
 */
export function assignWithMerges<E extends Edge>(
  prepared: PreparedReference,
  laid: readonly PlottedModel[],
  edges: readonly E[],
  barred: ReadonlySet<number>,
  rubric: Rubric,
  mayPair: MayPair,
): MergeChoice<E> {
  const rounds = listRounds(prepared, laid, barred, rubric, mayPair);
  if (rounds.length === 0) return { made: assignPairs(edges), merges: [] };
  let best = tryRounds(edges, [], []);
  let [chosen, forced] = [[] as readonly Round[], [] as readonly number[]];
  let budget = Math.min(400, Math.max(16, Math.floor(200_000 / (edges.length + 1))));
  for (let isBetter = true; isBetter && budget > 0; ) {
    isBetter = false;
    const [start, startForced] = [chosen, forced];
    for (const round of rounds) {
      if (start.includes(round)) continue;
      const wider = [...start, round];
      const free = tryRounds(edges, wider, startForced);
      const pairs = free.isValid || free.total <= best.total ? [] : listForcedPairs(round, best.made);
      for (const pair of [[], ...pairs]) {
        budget -= 1;
        const leftTo = [...startForced, ...pair];
        const trial = pair.length === 0 ? free : tryRounds(edges, wider, leftTo);
        if (!trial.isValid || trial.total <= best.total) continue;
        [best, chosen, forced, isBetter] = [trial, wider, leftTo, true];
      }
      if (budget <= 0) break;
    }
  }
  return best;
}
