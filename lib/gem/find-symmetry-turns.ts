import type { Solid } from "@/lib/gem/solid";
import type { Vec3 } from "@/lib/gem/vec3";

/** Vertices that a turn brings within this of each other (girdle widths) fall on one another. */
const TURN_TOLERANCE = 0.015;

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

/** The most turns that are looked for: no cut has more, and finer steps would come near the tolerance. */
const MOST_TURNS = 60;

const turnsOfSolids = new WeakMap<Solid, readonly number[]>();

/** The turns of a solid are all the multiples of the smallest, which is a whole part of a full turn. */
function findTurns({ vertices }: Solid): number[] {
  const mapsOnto = (count: number) =>
    vertices.every((vertex) => hasVertexNear(vertices, turnVertex(vertex, (2 * Math.PI) / count)));
  let count = MOST_TURNS;
  while (count > 1 && !mapsOnto(count)) count -= 1;
  return Array.from({ length: count }, (_, i) => {
    const turnDeg = (360 * i) / count;
    return turnDeg > 180 ? turnDeg - 360 : turnDeg;
  }).sort((a, b) => Math.abs(a) - Math.abs(b) || b - a);
}

/**
 * The turns that map a solid onto itself, in degrees clockwise as the crown is seen, in (-180, 180]; always
 * with 0, the smallest first and clockwise before counter-clockwise. Found from the solid: a sixtieth of a turn, then
 * wider ones, are tried on all its vertices, within 1.5% of a girdle width, so that a round
 * whose two diameters differ by 3% keeps its eight. Remembered with the solid.
 */
export function findSymmetryTurns(solid: Solid): readonly number[] {
  const known = turnsOfSolids.get(solid);
  if (known !== undefined) return known;
  const turns = findTurns(solid);
  turnsOfSolids.set(solid, turns);
  return turns;
}
