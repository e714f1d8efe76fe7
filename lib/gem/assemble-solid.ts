import { clipPlanes } from "@/lib/gem/clip-planes";
import type { CutPlan } from "@/lib/gem/cut-plan";
import type { FacetPlane } from "@/lib/gem/facet-plane";
import { toClockDeg } from "@/lib/gem/point";
import type { Facet, Lobe } from "@/lib/gem/solid";
import { dotVec3, type Vec3 } from "@/lib/gem/vec3";

/** Vertices nearer than this (girdle widths) are one vertex. */
const MERGE_TOLERANCE = 1e-7;

/** A wall that parts the right half of a cleft stone from the left; it is no facet. */
const CLEFT_WALL: FacetPlane = { kind: "wall", side: "girdle", normal: [-1, 0, 0], offset: 0 };

type Ring = readonly number[];

interface Draft {
  readonly plane: FacetPlane;
  readonly ring: Ring;
  readonly lobe: Lobe;
}

/** The number of a vertex: of an earlier one within the tolerance, or a new one. */
function numberVertex(vertices: Vec3[], vertex: Vec3): number {
  for (let i = 0; i < vertices.length; i += 1) {
    const other = vertices[i] as Vec3;
    if (
      Math.abs(other[0] - vertex[0]) < MERGE_TOLERANCE &&
      Math.abs(other[1] - vertex[1]) < MERGE_TOLERANCE &&
      Math.abs(other[2] - vertex[2]) < MERGE_TOLERANCE
    ) {
      return i;
    }
  }
  return vertices.push(vertex) - 1;
}

/** Twelve decimals, and no negative zero: the same digits on every run. */
function roundVertex(vertex: Vec3): Vec3 {
  const round = (value: number) => Math.round(value * 1e12) / 1e12 + 0;
  return [round(vertex[0]), round(vertex[1]), round(vertex[2])];
}

function toRing(vertices: Vec3[], polygon: readonly Vec3[]): number[] {
  const ring: number[] = [];
  for (const vertex of polygon) {
    const index = numberVertex(vertices, roundVertex(vertex));
    if (ring[ring.length - 1] !== index) ring.push(index);
  }
  while (ring.length > 1 && ring[0] === ring[ring.length - 1]) ring.pop();
  return ring;
}

function isSamePlane(a: FacetPlane, b: FacetPlane): boolean {
  return Math.abs(dotVec3(a.normal, b.normal) - 1) < 1e-12 && Math.abs(a.offset - b.offset) < 1e-9;
}

/** The planes without repeats: two halves along a straight side are one facet. The earlier one stays. */
function dropRepeats(planes: readonly FacetPlane[]): FacetPlane[] {
  return planes.filter((plane, i) => !planes.slice(0, i).some((earlier) => isSamePlane(earlier, plane)));
}

function mirrorPlane(plane: FacetPlane): FacetPlane {
  return { ...plane, normal: [0 - plane.normal[0], plane.normal[1], plane.normal[2]] };
}

/** The right half's facets and their mirror images; those that cross the middle are joined. */
function mirrorDrafts(right: readonly Draft[], vertices: Vec3[]): Draft[] {
  const onWall = (index: number) => Math.abs((vertices[index] as Vec3)[0]) < MERGE_TOLERANCE;
  const mirror = (index: number) => {
    const [x, y, z] = vertices[index] as Vec3;
    return onWall(index) ? index : numberVertex(vertices, [0 - x, y, z]);
  };
  return right.flatMap(({ plane, ring }): Draft[] => {
    if (Math.abs(plane.normal[0]) > 1e-9) {
      const mirrored = [...ring].reverse().map(mirror);
      return [
        { plane, ring, lobe: "right" },
        { plane: mirrorPlane(plane), ring: mirrored, lobe: "left" },
      ];
    }
    const end = ring.findIndex((index, i) => onWall(index) && onWall(ring[(i + 1) % ring.length] as number));
    const turned = [...ring.slice(end + 1), ...ring.slice(0, end + 1)];
    const back = turned.slice(1, -1).reverse().map(mirror);
    return [{ plane, ring: [...turned, ...back], lobe: "both" }];
  });
}

/** Takes out vertices in which fewer than three facets meet: they lie within an edge. */
function dropIdleVertices(drafts: readonly Draft[], vertices: readonly Vec3[]) {
  const degree = vertices.map(() => 0);
  for (const { ring } of drafts) for (const index of ring) degree[index] = (degree[index] ?? 0) + 1;
  const renumbered = new Map<number, number>();
  const kept: Vec3[] = [];
  vertices.forEach((vertex, index) => {
    if ((degree[index] ?? 0) < 3) return;
    renumbered.set(index, kept.length);
    kept.push(vertex);
  });
  const rings = drafts.map((draft) => ({
    ...draft,
    ring: draft.ring.flatMap((index) => renumbered.get(index) ?? []),
  }));
  return { drafts: rings, vertices: kept };
}

function getCentroidClockDeg(ring: Ring, vertices: readonly Vec3[]): number {
  let [x, y] = [0, 0];
  for (const index of ring) {
    x += (vertices[index] as Vec3)[0];
    y += (vertices[index] as Vec3)[1];
  }
  const [cx, cy] = [x / ring.length, y / ring.length];
  if (Math.hypot(cx, cy) < MERGE_TOLERANCE) return 0;
  const deg = Math.round(toClockDeg("crown", [cx, cy]) * 1e6) / 1e6;
  return deg >= 360 ? 0 : deg;
}

/** Numbers the facets of each kind clockwise from 12 and names them. */
function nameFacets(drafts: readonly Draft[], vertices: readonly Vec3[]): Facet[] {
  const kinds = [...new Set(drafts.map(({ plane }) => plane.kind))];
  return kinds.flatMap((kind) => {
    const members = drafts
      .filter(({ plane }) => plane.kind === kind)
      .map((draft) => ({ ...draft, clockDeg: getCentroidClockDeg(draft.ring, vertices) }))
      .sort((a, b) => a.clockDeg - b.clockDeg);
    return members.map(({ plane, ring, lobe }, i) => {
      const words = kind.replaceAll("-", " ");
      const name = plane.name ?? (members.length === 1 ? words : `${words} ${i + 1}`);
      const { side, normal, offset } = plane;
      return { name, kind, side, index: i + 1, vertices: ring, normal, offset, lobe };
    });
  });
}

/** What `assembleSolid` gives: the polyhedron, and the planes that left no facet on it. */
export interface Assembly {
  readonly vertices: readonly Vec3[];
  readonly facets: readonly Facet[];
  readonly vanished: readonly FacetPlane[];
}

/**
 * Clips the planes of a plan to a closed polyhedron. Facets come in the order in which the plan first names
 * their kinds, numbered clockwise from 12 as the crown is seen. Empty plans give no facets. Nothing is thrown:
 * planes that leave nothing are listed.
 */
export function assembleSolid(plan: CutPlan): Assembly {
  const planes = dropRepeats(plan.planes);
  const polygons = clipPlanes(plan.isCleft ? [...planes, CLEFT_WALL] : planes);
  const vertices: Vec3[] = [];
  const drafts: Draft[] = [];
  const vanished: FacetPlane[] = [];
  planes.forEach((plane, i) => {
    const ring = toRing(vertices, polygons[i] ?? []);
    if (ring.length < 3) vanished.push(plane);
    else drafts.push({ plane, ring, lobe: "both" });
  });
  const whole = plan.isCleft ? mirrorDrafts(drafts, vertices) : drafts;
  const tidy = dropIdleVertices(whole, vertices);
  return { vertices: tidy.vertices, facets: nameFacets(tidy.drafts, tidy.vertices), vanished };
}
