/** Metal reflections at the rim: tweezers opposite one another, prongs where the stone has them (SPEC 5.5). */
import { getRimShare } from "@/lib/gem/is-inside-outline";
import { type Point, toClockDeg } from "@/lib/gem/point";
import type { Rubric } from "@/lib/plot/rubric";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";

export interface GlintEvidence {
  /** Share of the way from the centre to the girdle, 0…1. */
  readonly rimShare: number;
  /** Degrees clockwise from 12 in the crown view. */
  readonly clockDeg: number;
  /** The leftover mark that lies most nearly opposite, and by how many degrees it misses that. */
  readonly opposite: { readonly plotted: number; readonly offDeg: number } | null;
  readonly prong: { readonly clockDeg: number; readonly offDeg: number } | null;
  /** False where several marks share one opposite and this one is not its partner (SPEC 6.4). */
  readonly isPaired: boolean;
}

interface RimMark {
  readonly plotted: number;
  readonly view: string;
  readonly rimShare: number;
  readonly clockDeg: number;
}

/** A centroid that rounding alone puts inside the rim, or an angle beyond the limit, counts as on it. */
const SLACK = 1e-9;

/** The angle between two clock positions, 0…180. */
function getAngleDeg(a: number, b: number): number {
  const turn = Math.abs(a - b) % 360;
  return turn > 180 ? 360 - turn : turn;
}

function listRimMarks(
  prepared: PreparedReference,
  laid: readonly PlottedModel[],
  leftover: readonly number[],
  rim: number,
): RimMark[] {
  return leftover.flatMap((plotted) => {
    const model = laid[plotted];
    if (model === undefined) return [];
    const { view } = model.mark;
    const centre: Point = [model.geometry.centreX, model.geometry.centreY];
    const rimShare = getRimShare(prepared.solid, view, centre);
    if (rimShare < 1 - rim - SLACK) return [];
    return [{ plotted, view, rimShare, clockDeg: toClockDeg(view, centre) }];
  });
}

interface Opposition {
  readonly a: number;
  readonly b: number;
  readonly offDeg: number;
}

/** Marks that lie opposite one another, the most nearly opposite first. */
function listOppositions(rimMarks: readonly RimMark[], oppositeDeg: number): Opposition[] {
  const oppositions: Opposition[] = [];
  rimMarks.forEach((a, i) => {
    for (const b of rimMarks.slice(i + 1)) {
      if (a.view !== b.view) continue;
      const offDeg = 180 - getAngleDeg(a.clockDeg, b.clockDeg);
      if (offDeg <= oppositeDeg + SLACK) oppositions.push({ a: a.plotted, b: b.plotted, offDeg });
    }
  });
  const toRank = ({ offDeg }: Opposition) => Math.round(offDeg / SLACK);
  return oppositions.sort((x, y) => toRank(x) - toRank(y) || x.a - y.a || x.b - y.b);
}

/**
 * The leftover marks that are glints by the rule, with the evidence, by plotted index. Marks at the rim are paired one
 * to one with their opposites as well, the most nearly opposite first, for what a glint is charged.
 */
export function findGlints(
  prepared: PreparedReference,
  laid: readonly PlottedModel[],
  leftover: readonly number[],
  { glint }: Pick<Rubric, "glint">,
): ReadonlyMap<number, GlintEvidence> {
  const rimMarks = listRimMarks(prepared, laid, leftover, glint.rim);
  const nearest = new Map<number, { plotted: number; offDeg: number }>();
  const paired = new Set<number>();
  for (const { a, b, offDeg } of listOppositions(rimMarks, glint.oppositeDeg)) {
    if (!nearest.has(a)) nearest.set(a, { plotted: b, offDeg });
    if (!nearest.has(b)) nearest.set(b, { plotted: a, offDeg });
    if (paired.has(a) || paired.has(b)) continue;
    paired.add(a).add(b);
  }
  const glints = new Map<number, GlintEvidence>();
  for (const { plotted, rimShare, clockDeg } of rimMarks) {
    const prong = prepared.stone.prongsDeg
      .map((at) => ({ clockDeg: at, offDeg: getAngleDeg(clockDeg, at) }))
      .filter(({ offDeg }) => offDeg <= glint.prongDeg + SLACK)
      .sort((x, y) => x.offDeg - y.offDeg)[0];
    const opposite = nearest.get(plotted);
    if (opposite === undefined && prong === undefined) continue;
    glints.set(plotted, {
      rimShare,
      clockDeg,
      opposite: opposite ?? null,
      prong: prong ?? null,
      isPaired: prong !== undefined || paired.has(plotted),
    });
  }
  return glints;
}
