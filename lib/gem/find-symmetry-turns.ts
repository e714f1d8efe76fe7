import type { Solid } from "@/lib/gem/solid";
import type { Vec3 } from "@/lib/gem/vec3";

/** Vertices that a turn brings within this of each other (girdle widths) fall on one another. */
const TURN_TOLERANCE = 0.01;

function turnVertex([x, y, z]: Vec3, clockwise: number): Vec3 {
  const [cos, sin] = [Math.cos(clockwise), Math.sin(clockwise)];
  return [x * cos + y * sin, y * cos - x * sin, z];
}

function hasVertexNear(vertices: readonly Vec3[], [x, y, z]: Vec3): boolean {
  return vertices.some(
    (other) =>
      Math.abs(other[2] - z) <= TURN_TOLERANCE && Math.hypot(other[0] - x, other[1] - y) <= TURN_TOLERANCE,
  );
}

/** Turns that could map the solid onto itself: those that carry its outermost vertex to one like it. */
function listCandidates(vertices: readonly Vec3[]): number[] {
  const radius = ([x, y]: Vec3) => Math.hypot(x, y);
  const outermost = vertices.reduce((far, vertex) => (radius(vertex) > radius(far) + 1e-9 ? vertex : far));
  const alike = vertices.filter(
    (vertex) =>
      Math.abs(radius(vertex) - radius(outermost)) <= TURN_TOLERANCE &&
      Math.abs(vertex[2] - outermost[2]) <= TURN_TOLERANCE,
  );
  const from = Math.atan2(outermost[0], outermost[1]);
  return alike.map((vertex) => Math.atan2(vertex[0], vertex[1]) - from);
}

const turnsOfSolids = new WeakMap<Solid, readonly number[]>();

/** The turns of a solid are all the multiples of one of them, so their number says them exactly. */
function findTurns(solid: Solid): number[] {
  const count = listCandidates(solid.vertices).filter((turn) =>
    solid.vertices.every((vertex) => hasVertexNear(solid.vertices, turnVertex(vertex, turn))),
  ).length;
  return Array.from({ length: count }, (_, i) => {
    const turnDeg = (360 * i) / count;
    return turnDeg > 180 ? turnDeg - 360 : turnDeg;
  }).sort((a, b) => Math.abs(a) - Math.abs(b) || b - a);
}

/**
 * The turns that map a solid onto itself, in degrees clockwise as the crown is seen, in (-180, 180]; always
 * with 0, the smallest first and clockwise before counter-clockwise. Found from the solid: the turns that carry
 * its outermost vertex to one like it are tried on all vertices, within 1% of a girdle width, so that a round
 * whose two diameters differ by 2% keeps its eight. Remembered with the solid.
 */
export function findSymmetryTurns(solid: Solid): readonly number[] {
  const known = turnsOfSolids.get(solid);
  if (known !== undefined) return known;
  const turns = findTurns(solid);
  turnsOfSolids.set(solid, turns);
  return turns;
}
