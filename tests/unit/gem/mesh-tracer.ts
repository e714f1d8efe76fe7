/**
 * A second opinion on the stone's optics that shares no code with lib/gem: the facets as triangles, hit tests
 * after Möller and Trumbore 1997 (from memory), Snell and Fresnel written out again in angles. It is slow and
 * knows nothing of planes, beams or mirrored inclusions.
 */
type V = readonly [number, number, number];

export interface Mesh {
  readonly triangles: readonly {
    readonly a: V;
    readonly b: V;
    readonly c: V;
    readonly ab: V;
    readonly ac: V;
    readonly facet: number;
  }[];
}

export interface Leg {
  readonly from: V;
  readonly direction: V;
  readonly to: V;
  /** Facets so far: entry, then mirrors. */
  readonly path: readonly number[];
  readonly strength: number;
  /** The least distance of any hit so far from a triangle edge that is a facet edge. */
  readonly clearance: number;
}

const sub = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: V, b: V) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: V, b: V): V => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: V): V => {
  const l = Math.hypot(...a);
  return [a[0] / l, a[1] / l, a[2] / l];
};
const along = (a: V, d: V, t: number): V => [a[0] + d[0] * t, a[1] + d[1] * t, a[2] + d[2] * t];

/** Triangles from each facet's middle to its edges, so that a facet need not be convex. */
export function toMesh(solid: {
  vertices: readonly V[];
  facets: readonly { vertices: readonly number[] }[];
}): Mesh {
  const triangles = solid.facets.flatMap((facet, index) => {
    const ring = facet.vertices.map((i) => solid.vertices[i] as V);
    const sum = ring.reduce<V>((s, v) => [s[0] + v[0], s[1] + v[1], s[2] + v[2]], [0, 0, 0]);
    const a: V = [sum[0] / ring.length, sum[1] / ring.length, sum[2] / ring.length];
    return ring.map((b, i) => {
      const c = ring[(i + 1) % ring.length] as V;
      return { a, b, c, ab: sub(b, a), ac: sub(c, a), facet: index };
    });
  });
  return { triangles };
}

export interface MeshHit {
  readonly t: number;
  readonly facet: number;
  readonly normal: V;
  readonly clearance: number;
}

/** Whatever finds the nearest facet along a ray. */
export type HitFinder = (from: V, direction: V, entering: boolean) => MeshHit | null;

/** The nearest triangle ahead; facets met head-on from outside (entering) or from inside (leaving). */
export function hitMesh(mesh: Mesh, from: V, direction: V, entering: boolean): MeshHit | null {
  let best: MeshHit | null = null;
  for (const { a, b, c, ab, ac, facet } of mesh.triangles) {
    const p = cross(direction, ac);
    const det = dot(ab, p);
    if (Math.abs(det) < 1e-14 || det > 0 !== entering) continue;
    const s = sub(from, a);
    const u = dot(s, p) / det;
    const q = cross(s, ab);
    const v = dot(direction, q) / det;
    if (u < -1e-10 || v < -1e-10 || u + v > 1 + 1e-10) continue;
    const t = dot(ac, q) / det;
    if (t < -1e-9 || (best !== null && t >= best.t)) continue;
    const edge = sub(c, b);
    const hit = along(from, direction, t);
    const clearance = Math.hypot(...cross(sub(hit, b), edge)) / Math.hypot(...edge);
    best = { t, facet, normal: unit(cross(ab, ac)), clearance };
  }
  return best;
}

/** Light that goes straight down on a view at (x, y) of the stone's frame, leg by leg. */
export function traceDown(
  mesh: Mesh | HitFinder,
  down: number,
  x: number,
  y: number,
  n: number,
  bounces: number,
): Leg[] {
  const find: HitFinder =
    typeof mesh === "function" ? mesh : (at, towards, isEntering) => hitMesh(mesh, at, towards, isEntering);
  const start: V = [x, y, -down * 5];
  const entry = find(start, [0, 0, down], true);
  if (entry === null) return [];
  const incidence = Math.acos(Math.min(1, Math.abs(entry.normal[2])));
  const inside = Math.asin(Math.sin(incidence) / n);
  const sideways: V = [-entry.normal[0], -entry.normal[1], 0];
  const flat = Math.hypot(...sideways);
  // Turn the ray from straight down by (incidence - inside) in the plane of the normal, away from it.
  const turn = incidence - inside;
  let direction: V =
    flat < 1e-12
      ? [0, 0, down]
      : unit([
          (sideways[0] / flat) * Math.sin(turn),
          (sideways[1] / flat) * Math.sin(turn),
          down * Math.cos(turn),
        ]);
  let from = along(start, [0, 0, down], entry.t);
  let path: readonly number[] = [entry.facet];
  let strength = 1;
  let clearance = entry.clearance;
  const legs: Leg[] = [];
  for (let k = 0; k <= bounces; k += 1) {
    const hit = find(from, direction, false);
    if (hit === null) break;
    const to = along(from, direction, hit.t);
    legs.push({ from, direction, to, path, strength, clearance });
    strength *= getFresnel(Math.acos(Math.min(1, dot(direction, hit.normal))), n);
    clearance = Math.min(clearance, hit.clearance);
    path = [...path, hit.facet];
    direction = along(direction, hit.normal, -2 * dot(direction, hit.normal));
    from = to;
  }
  return legs;
}

/** Unpolarised reflectance inside the stone, in the sine and tangent form of Fresnel's equations (from memory). */
export function getFresnel(inside: number, n: number): number {
  if (n * Math.sin(inside) >= 1) return 1;
  if (inside < 1e-7) return ((n - 1) / (n + 1)) ** 2;
  const outside = Math.asin(n * Math.sin(inside));
  const s = (Math.sin(inside - outside) / Math.sin(inside + outside)) ** 2;
  const p = (Math.tan(inside - outside) / Math.tan(inside + outside)) ** 2;
  return (s + p) / 2;
}

/** How far, and in which direction, a leg misses a point; null when the point is not beside the leg. */
export function getMiss(leg: Leg, at: V): { t: number; miss: V; length: number } {
  const t = dot(sub(at, leg.from), leg.direction);
  return {
    t,
    miss: sub(at, along(leg.from, leg.direction, t)),
    length: Math.hypot(...sub(leg.to, leg.from)),
  };
}
