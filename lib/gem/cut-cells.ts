import { getHull } from "@/lib/gem/get-hull";
import type { Lobe, Solid } from "@/lib/gem/solid";
import type { Vec3 } from "@/lib/gem/vec3";

/** The facet index that stands for the wall between the two halves of a cleft stone. Light passes it. */
export const WALL = -1;

/** A convex polygon on the border of a cell. */
export interface CellFace {
  readonly facetIndex: number;
  readonly normal: Vec3;
  readonly offset: number;
  /** Indices into the cell's vertices, counter-clockwise from outside the cell. */
  readonly ring: readonly number[];
}

/**
 * A convex part of a solid. All stones but the heart are one cell; the heart is two, with a wall between them
 * that is no facet. Within a cell, the first plane that a ray meets going outward is where it leaves.
 */
export interface Cell {
  readonly lobe: Lobe;
  readonly vertices: readonly Vec3[];
  readonly faces: readonly CellFace[];
}

/** The part of a polygon with sign * x >= 0; keeps the sense of the corners. */
function clipAtMiddle(polygon: readonly Vec3[], sign: number): Vec3[] {
  const out: Vec3[] = [];
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as Vec3;
    const [here, there] = [a[0] * sign, b[0] * sign];
    if (here >= 0) out.push(a);
    if ((here > 0 && there < 0) || (here < 0 && there > 0)) {
      const t = here / (here - there);
      out.push([0, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t]);
    }
  });
  return out;
}

function getHalf(solid: Solid, lobe: "right" | "left"): Cell {
  const sign = lobe === "right" ? 1 : -1;
  const vertices: Vec3[] = [];
  const faces: CellFace[] = [];
  const addFace = (facetIndex: number, normal: Vec3, offset: number, polygon: readonly Vec3[]) => {
    faces.push({ facetIndex, normal, offset, ring: polygon.map((vertex) => vertices.push(vertex) - 1) });
  };
  solid.facets.forEach((facet, facetIndex) => {
    if (facet.lobe !== "both" && facet.lobe !== lobe) return;
    const polygon = facet.vertices.map((index) => solid.vertices[index] as Vec3);
    addFace(facetIndex, facet.normal, facet.offset, clipAtMiddle(polygon, sign));
  });
  const onWall = vertices.filter(([x]) => Math.abs(x) < 1e-9);
  const hull = getHull(onWall.map(([, y, z]) => [y, z] as const));
  // Seen from outside the right half (from x < 0), y runs to the left: turn the hull round.
  const ring = lobe === "right" ? [...hull].reverse() : hull;
  addFace(
    WALL,
    [-sign, 0, 0],
    0,
    ring.map(([y, z]): Vec3 => [0, y, z]),
  );
  return { lobe, vertices, faces };
}

const cellsOfSolids = new WeakMap<Solid, readonly Cell[]>();

function cutCells(solid: Solid): Cell[] {
  if (solid.isCleft) return [getHalf(solid, "right"), getHalf(solid, "left")];
  const faces = solid.facets.map((facet, facetIndex) => ({
    facetIndex,
    normal: facet.normal,
    offset: facet.offset,
    ring: facet.vertices,
  }));
  return [{ lobe: "both", vertices: solid.vertices, faces }];
}

/** The convex cells of a solid: one, or two for a cleft stone (right, left). Remembered with the solid. */
export function listCells(solid: Solid): readonly Cell[] {
  const known = cellsOfSolids.get(solid);
  if (known !== undefined) return known;
  const cells = cutCells(solid);
  cellsOfSolids.set(solid, cells);
  return cells;
}

/** The cell on the other side of the wall; the same cell where there is no wall. */
export function getOtherCell(solid: Solid, cell: Cell): Cell {
  return listCells(solid).find((other) => other !== cell) ?? cell;
}

/** The cells that hold a point, walls included: both, for a point in the middle plane of a cleft stone. */
export function listCellsAt(solid: Solid, point: Vec3): readonly Cell[] {
  const cells = listCells(solid);
  if (cells.length === 1) return cells;
  return cells.filter(({ lobe }) => (lobe === "right" ? point[0] >= -1e-9 : point[0] <= 1e-9));
}
