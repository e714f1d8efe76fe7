import { AppError } from "@/lib/base/app-error";
import { assembleSolid } from "@/lib/gem/assemble-solid";
import type { CutPlan } from "@/lib/gem/cut-plan";
import { type FacetPlane, toFacetPlane } from "@/lib/gem/facet-plane";
import { getHull } from "@/lib/gem/get-hull";
import type { Point } from "@/lib/gem/point";
import type { PlaneSpec, Proportions } from "@/lib/gem/proportions";
import type { Facet } from "@/lib/gem/solid";
import { scaleVec3, type Vec3 } from "@/lib/gem/vec3";

/** "Crown main 3" is of the kind "crown-main". */
function toKind(name: string): string {
  const kind = name
    .toLowerCase()
    .replace(/[\s.#-]*\d+\s*$/, "")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "");
  return kind === "" ? "facet" : kind;
}

/** `unit` is the largest distance: the rough stone is about 1 across whatever the unit of the list. */
function toPlane(spec: PlaneSpec, unit: number): FacetPlane {
  const [angle, azimuth] = [(spec.angleDeg * Math.PI) / 180, (spec.azimuthDeg * Math.PI) / 180];
  const up = spec.side === "pavilion" ? -1 : 1;
  const outward: Vec3 = [
    Math.sin(angle) * Math.sin(azimuth),
    Math.sin(angle) * Math.cos(azimuth),
    spec.angleDeg === 90 ? 0 : up * Math.cos(angle),
  ];
  const on = scaleVec3(outward, spec.distance / unit / 2);
  return { ...toFacetPlane(toKind(spec.name), spec.side, outward, on), name: spec.name };
}

function refuse(message: string): never {
  throw new AppError("bad-input", `These planes are refused: ${message}.`, [{ path: "planes", message }]);
}

function getMiddle(values: readonly number[]): number {
  return (Math.min(...values) + Math.max(...values)) / 2;
}

/** The height of the middle of the girdle: of its facets, or of the outermost vertex of a knife edge. */
function getGirdleHeight(assembly: ReturnType<typeof assembleSolid>): number {
  const girdle = assembly.facets
    .filter((facet) => facet.side === "girdle")
    .flatMap((facet) => facet.vertices);
  const heights = girdle.map((index) => (assembly.vertices[index] as Vec3)[2]);
  if (heights.length > 0) return getMiddle(heights);
  const outermost = assembly.vertices.reduce((far, vertex) => (vertex[0] > far[0] + 1e-9 ? vertex : far));
  return outermost[2];
}

/** True when every edge of every facet is an edge of another facet the other way round. */
function isClosed(facets: readonly Facet[]): boolean {
  const edges = new Set<string>();
  for (const { vertices } of facets) {
    vertices.forEach((from, i) => {
      edges.add(`${from}>${vertices[(i + 1) % vertices.length]}`);
    });
  }
  const hasPartner = (edge: string) => edges.has(edge.split(">").reverse().join(">"));
  const isFlat = facets.some(({ vertices }) => vertices.length < 3);
  return facets.length >= 4 && !isFlat && [...edges].every(hasPartner);
}

/**
 * A custom cut from its list of planes. The stone is moved and scaled so that its girdle is 1 wide and centred
 * and z = 0 lies at half the girdle's height; distances may be in any unit. Throws AppError "bad-input" when the
 * planes do not close to a solid, or when one of them leaves no facet (by name).
 */
export function planCustom(proportions: Proportions): CutPlan {
  const specs = proportions.planes ?? [];
  const unit = Math.max(...specs.map((spec) => spec.distance));
  const planes = specs.map((spec) => toPlane(spec, unit));
  const rough = assembleSolid({ planes, outline: [], isCleft: false });
  if (!isClosed(rough.facets)) refuse("they do not close to a solid");
  const lost = rough.vanished[0];
  if (lost !== undefined) refuse(`${lost.name ?? lost.kind} leaves no facet`);
  const xs = rough.vertices.map(([x]) => x);
  const width = Math.max(...xs) - Math.min(...xs);
  const centre: Vec3 = [getMiddle(xs), getMiddle(rough.vertices.map(([, y]) => y)), getGirdleHeight(rough)];
  const scaled = planes.map((plane) => {
    const shift = plane.normal[0] * centre[0] + plane.normal[1] * centre[1] + plane.normal[2] * centre[2];
    return { ...plane, offset: (plane.offset - shift) / width };
  });
  const corners = getHull(rough.vertices.map(([x, y]) => [x, y] as const)).reverse();
  const outline = corners.map(([x, y]): Point => [(x - centre[0]) / width, (y - centre[1]) / width]);
  return { planes: scaled, outline, isCleft: false };
}
