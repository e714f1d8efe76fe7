/** Why each stray came about, with its evidence: the first cause that fits (SPEC 5). */
import type { Point, View } from "@/lib/gem/point";
import type { DottingBurst } from "@/lib/plot/find-dotting";
import type { Cause, Decoy } from "@/lib/plot/mark";
import type { Rubric } from "@/lib/plot/rubric";
import { toTie } from "@/lib/scoring/assign-pairs";
import { findGlints, type GlintEvidence } from "@/lib/scoring/find-glints";
import type { MarkGeometry } from "@/lib/scoring/mark-geometry";
import type { Matching } from "@/lib/scoring/match-marks";
import { boundDistance, measureNearness, measureOneSided } from "@/lib/scoring/measure-distance";
import type { PlottedModel } from "@/lib/scoring/prepare-plot";
import type { PlacedEcho, PreparedReference, ReferenceModel } from "@/lib/scoring/prepare-reference";
import { LIKE_TYPE } from "@/lib/scoring/rate-pair";
import type { StandIn } from "@/lib/scoring/stone-optics";

export type Evidence =
  | {
      readonly kind: "decoy";
      readonly decoy: Decoy;
      readonly geometry: MarkGeometry;
      readonly distance: number;
    }
  | { readonly kind: "fragment"; readonly model: ReferenceModel; readonly distance: number }
  | {
      readonly kind: "double";
      readonly model: ReferenceModel;
      readonly standIn: StandIn;
      readonly distance: number;
    }
  | {
      readonly kind: "echo";
      readonly model: ReferenceModel;
      readonly echo: PlacedEcho;
      readonly distance: number;
      /** How many predicted images of the stone lie as near, this one with them. */
      readonly count: number;
    }
  | { readonly kind: "glint"; readonly glint: GlintEvidence }
  | { readonly kind: "dust"; readonly isUnwiped: boolean; readonly burst: DottingBurst | null }
  | { readonly kind: "unexplained" };

export interface Stray {
  /** Index into the sorted plotted marks. */
  readonly plotted: number;
  readonly cause: Cause;
  readonly evidence: Evidence;
  /** Hundredths of the plot's share that it costs, before the cap. */
  readonly charge: number;
  /** A ruling on the cause (SPEC 10.4), and what the engine had put it down to. */
  readonly ruled?: { readonly reason: string; readonly isHeld: boolean; readonly before: Cause };
}

interface FoundPlace {
  readonly model: ReferenceModel;
  readonly index: number;
  readonly geometry: MarkGeometry;
}

interface BehindPlace {
  readonly model: ReferenceModel;
  readonly standIn: StandIn;
  readonly geometry: MarkGeometry;
}

interface Scene {
  readonly prepared: PreparedReference;
  readonly laid: readonly PlottedModel[];
  readonly rubric: Rubric;
  readonly bursts: readonly DottingBurst[];
  /** What was found, or has a mark set against it, in its own view and as it shows in the other. */
  readonly found: Readonly<Record<View, readonly FoundPlace[]>>;
  readonly behind: Readonly<Record<View, readonly BehindPlace[]>>;
  readonly glints: ReadonlyMap<number, GlintEvidence>;
}

/** The nearest of the places that lie within `limit` of a mark; of equally near ones the first. */
function findNearest<P extends { readonly geometry: MarkGeometry }>(
  places: readonly P[],
  plotted: MarkGeometry,
  limit: number,
  accepts: (place: P) => boolean = () => true,
): { place: P; distance: number } | null {
  let nearest: { place: P; distance: number } | null = null;
  for (const place of places) {
    if (!accepts(place)) continue;
    if (boundDistance(place.geometry, plotted) - (place.geometry.reach + plotted.reach) / 2 > limit) continue;
    const distance = measureNearness(place.geometry, plotted);
    if (distance > limit + 1e-9) continue;
    if (nearest === null || toTie(distance) < toTie(nearest.distance)) nearest = { place, distance };
  }
  return nearest;
}

function findDecoy({ prepared, rubric }: Scene, { mark, geometry }: PlottedModel): Evidence | null {
  const places = prepared.decoys.filter(({ decoy }) => decoy.view === mark.view);
  const nearest = findNearest(places, geometry, rubric.near);
  if (nearest === null) return null;
  return { kind: "decoy", ...nearest.place, distance: nearest.distance };
}

function findFragment({ prepared, rubric, found }: Scene, { mark, geometry }: PlottedModel): Evidence | null {
  const types = prepared.getTypes(mark.characteristic);
  const isAlike = ({ index }: FoundPlace) => (types[index] as number) >= LIKE_TYPE;
  const nearest = findNearest(found[mark.view], geometry, rubric.far / 2, isAlike);
  return nearest && { kind: "fragment", model: nearest.place.model, distance: nearest.distance };
}

function findDouble({ rubric, behind }: Scene, { mark, geometry }: PlottedModel): Evidence | null {
  const nearest = findNearest(behind[mark.view], geometry, rubric.far);
  if (nearest === null) return null;
  const { model, standIn } = nearest.place;
  return { kind: "double", model, standIn, distance: nearest.distance };
}

/** From an image, which is predicted for the centre of a mark, to the centre of a shape or to the shape as a whole. */
function measureFromImage(image: Point, geometry: MarkGeometry, limit: number): number {
  const x = image[0];
  const y = image[1];
  const dx = x - geometry.centreX;
  const dy = y - geometry.centreY;
  const centres = Math.sqrt(dx * dx + dy * dy);
  if (centres <= limit || centres - geometry.reach > limit) return centres;
  const point = Float64Array.of(x, y);
  const dot: MarkGeometry = { ...geometry, kind: "dot", vertices: point, samples: point, reach: 0 };
  return Math.min(centres, (measureOneSided(dot, geometry) + measureOneSided(geometry, dot)) / 2);
}

function findEcho({ prepared, rubric }: Scene, { mark, geometry }: PlottedModel): Evidence | null {
  let nearest: { echo: PlacedEcho; distance: number } | null = null;
  let count = 0;
  for (const echo of prepared.echoes[mark.view]) {
    const distance = measureFromImage(echo.at, geometry, rubric.near);
    if (distance > rubric.near + 1e-9) continue;
    count += 1;
    if (nearest === null || toTie(distance) < toTie(nearest.distance)) nearest = { echo, distance };
  }
  const model = nearest && prepared.marks[nearest.echo.reference];
  return nearest && model ? { kind: "echo", model, ...nearest, count } : null;
}

function findDust({ rubric, bursts }: Scene, { mark, geometry }: PlottedModel): Evidence | null {
  if (mark.shape.kind !== "dot" && geometry.extent > rubric.dust.extent + 1e-9) return null;
  const { atMs } = mark;
  const burst =
    bursts.find(({ fromMs, toMs }) => atMs !== undefined && atMs >= fromMs && atMs <= toMs) ?? null;
  const isUnwiped = mark.proofs?.includes("wiped") !== true;
  return isUnwiped || burst !== null ? { kind: "dust", isUnwiped, burst } : null;
}

function toCause(evidence: Evidence): Cause {
  return evidence.kind === "decoy" ? evidence.decoy.cause : evidence.kind;
}

/** What a stray of a cause costs. A decoy's "other-view" costs as much as a double: both are one feature seen from behind. */
export function getCharge(cause: Cause, { deductions }: Pick<Rubric, "deductions">): number {
  return deductions[cause === "other-view" ? "double" : cause];
}

function explainStray(scene: Scene, plotted: number): Stray | null {
  const model = scene.laid[plotted];
  if (model === undefined) return null;
  const placed =
    findDecoy(scene, model) ??
    findFragment(scene, model) ??
    findDouble(scene, model) ??
    findEcho(scene, model);
  const glint = placed === null ? scene.glints.get(plotted) : undefined;
  const rest = placed ?? findDust(scene, model) ?? { kind: "unexplained" as const };
  const evidence = glint === undefined ? rest : { kind: "glint" as const, glint };
  const cause = toCause(evidence);
  const charge = getCharge(cause, scene.rubric);
  // Without this one mark drawn at the rim could make a handful of dust cheaper (SPEC 6.4).
  const isShared = glint !== undefined && !glint.isPaired;
  return {
    plotted,
    cause,
    evidence,
    charge: isShared ? Math.max(charge, getCharge(toCause(rest), scene.rubric)) : charge,
  };
}

function listFoundPlaces(prepared: PreparedReference, matching: Matching): Pick<Scene, "found" | "behind"> {
  const found: Record<View, FoundPlace[]> = { crown: [], pavilion: [] };
  const behind: Record<View, BehindPlace[]> = { crown: [], pavilion: [] };
  const indices = [...matching.matched, ...matching.merges, ...matching.setAside].map((one) => one.reference);
  for (const index of indices.sort((a, b) => a - b)) {
    const model = prepared.marks[index];
    if (model === undefined) continue;
    const { view } = model.mark;
    found[view].push({ model, index, geometry: model.geometry });
    for (const standIn of model.standIns) {
      behind[view === "crown" ? "pavilion" : "crown"].push({ model, standIn, geometry: standIn.geometry });
    }
  }
  return { found, behind };
}

/** The strays of a matching, ordered by plotted mark. Nothing left over gives none. */
export function findCauses(
  prepared: PreparedReference,
  laid: readonly PlottedModel[],
  matching: Matching,
  bursts: readonly DottingBurst[],
  rubric: Rubric,
): Stray[] {
  const glints = findGlints(prepared, laid, matching.leftover, rubric);
  const scene: Scene = { prepared, laid, rubric, bursts, ...listFoundPlaces(prepared, matching), glints };
  return matching.leftover.flatMap((plotted) => explainStray(scene, plotted) ?? []);
}
