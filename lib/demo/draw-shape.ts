/** How a hand draws a shape that the eye has seen, and how it is kept on the stone. */
import type { SeededRandom } from "@/lib/base/seeded-random";
import { getFeatureCentre } from "@/lib/demo/measure-feature";
import type { StudentSkill } from "@/lib/demo/student-skill";
import { getRimShare } from "@/lib/gem/is-inside-outline";
import type { Point, View } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";
import { findSelfCrossing, listVertices, mapVertices, type Shape } from "@/lib/plot/shape";

/** Vertices wander by this share of the scatter besides the shape as a whole. */
const VERTEX_SHARE = 0.25;
/** The largest share of the way to the girdle that a drawn vertex may have. */
const RIM_LIMIT = 0.992;
const MOST_SHIFTS = 60;

/** Maps a shape about its centre: scaled, then moved. */
function placeShape(shape: Shape, scale: number, shift: Point): Shape {
  const [cx, cy] = getFeatureCentre(shape);
  return mapVertices(shape, ([x, y]) => [cx + (x - cx) * scale + shift[0], cy + (y - cy) * scale + shift[1]]);
}

/** The shape moved by the scatter of the hand, sized by its misjudgement, its vertices a little unsteady. */
export function scatterShape(random: SeededRandom, shape: Shape, skill: StudentSkill): Shape {
  const { scatter, sizeScatter } = skill;
  const shift: Point = [random.normal(0, scatter), random.normal(0, scatter)];
  const placed = placeShape(shape, Math.exp(random.normal(0, sizeScatter)), shift);
  if (placed.kind === "dot") return placed;
  const unsteady = mapVertices(placed, ([x, y]) => [
    x + random.normal(0, scatter * VERTEX_SHARE),
    y + random.normal(0, scatter * VERTEX_SHARE),
  ]);
  const isTangled = unsteady.kind === "outline" && findSelfCrossing(unsteady.points) !== null;
  return isTangled ? placed : unsteady;
}

/** A small outline of five vertices round a point. */
export function drawPatch(random: SeededRandom, [x, y]: Point, size: number): Shape {
  const points = [0, 1, 2, 3, 4].map((corner): [number, number] => {
    const angle = ((corner + 0.4 * random.next()) * 2 * Math.PI) / 5;
    const radius = (size / 2) * (0.8 + 0.2 * random.next());
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
  return { kind: "outline", points };
}

const round = (value: number) => Math.round(value * 1e4) / 1e4 + 0;

function isOnStone(solid: Solid, view: View, shape: Shape): boolean {
  return listVertices(shape).every((vertex) => getRimShare(solid, view, vertex) <= RIM_LIMIT);
}

/**
 * The shape drawn in towards the centre until all of it lies on the stone, rounded to four decimals; shrunk as well
 * when it is too large for that.
 */
export function keepOnStone(solid: Solid, view: View, shape: Shape): Shape {
  let kept = shape;
  for (let shifts = 0; shifts < MOST_SHIFTS && !isOnStone(solid, view, kept); shifts += 1) {
    const [cx, cy] = getFeatureCentre(kept);
    kept = placeShape(kept, shifts < MOST_SHIFTS / 2 ? 1 : 0.9, [-0.03 * cx, -0.03 * cy]);
  }
  const rounded = mapVertices(kept, ([x, y]) => [round(x), round(y)]);
  const isTangled = rounded.kind === "outline" && findSelfCrossing(rounded.points) !== null;
  return isTangled ? { kind: "stroke", points: rounded.points } : rounded;
}
