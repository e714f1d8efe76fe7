/** Marks in the stone itself: each at its depth, for a figure that turns. Pure. */
import { isAppError } from "@/lib/base/app-error";
import { locatePoint } from "@/lib/gem/locate-point";
import { placeInclusion } from "@/lib/gem/place-inclusion";
import { type Point, toCrownPoint } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";
import type { Vec3 } from "@/lib/gem/vec3";
import { getSampleCentre } from "@/lib/plot/get-sample-centre";
import type { ReferenceMark } from "@/lib/plot/mark";
import type { MarkStyleName } from "@/lib/plot/notation";
import { listVertices, type Shape } from "@/lib/plot/shape";

/** A mark to place: a reference mark, how it is drawn, and what it is called. */
export interface SolidMarkSource {
  readonly mark: ReferenceMark;
  readonly isInside: boolean;
  readonly label: string;
  readonly style: MarkStyleName;
  readonly callout: string | null;
}

/** A mark where it sits in the stone, in the stone's frame. */
export interface SolidMark {
  readonly key: string;
  readonly kind: Shape["kind"];
  readonly points: readonly Vec3[];
  readonly style: MarkStyleName;
  readonly callout: string | null;
  /** From the surface, where it is seen, down to the mark; null for one on the surface. */
  readonly sight: readonly [from: Vec3, to: Vec3] | null;
  readonly words: string;
}

/** The shape laid flat at the inclusion's depth, its centre where the inclusion sits. */
function layFlat({ view, shape }: ReferenceMark, centre: Point, [x, y, z]: Vec3): Vec3[] {
  const [cx, cy] = toCrownPoint(view, centre);
  return listVertices(shape).map((vertex): Vec3 => {
    const [vx, vy] = toCrownPoint(view, vertex);
    return [x + vx - cx, y + vy - cy, z];
  });
}

function placeMark(solid: Solid, source: SolidMarkSource, depth: number, refractiveIndex: number): SolidMark {
  const { mark, isInside, label, style, callout } = source;
  const centre = getSampleCentre(mark.shape);
  const place = (at: Point, share: number) => placeInclusion(solid, mark.view, at, share, refractiveIndex);
  const inclusion = place(centre, depth);
  const where = locatePoint(solid, mark.view, centre).words;
  return {
    key: mark.id,
    kind: mark.shape.kind,
    points: isInside
      ? layFlat(mark, centre, inclusion)
      : listVertices(mark.shape).map((vertex) => place(vertex, 0)),
    style,
    callout,
    sight: isInside ? [place(centre, 0), inclusion] : null,
    words: `${label}, ${mark.view}, ${where}, ${isInside ? `depth ${depth}` : "on the surface"}`,
  };
}

/**
 * The marks in the stone: inside ones at their depth under the centre of their samples, surface ones on the facets.
 * `withoutDepth` counts the inside marks whose depth nobody gave, `outside` those that do not lie within this girdle: they
 * are left out. No marks give none.
 */
export function placeSolidMarks(
  solid: Solid,
  sources: readonly SolidMarkSource[],
  refractiveIndex: number,
): { marks: SolidMark[]; withoutDepth: number; outside: number } {
  const marks: SolidMark[] = [];
  let [withoutDepth, outside] = [0, 0];
  for (const source of sources) {
    const depth = source.isInside ? source.mark.depth : 0;
    if (depth === undefined) {
      withoutDepth += 1;
      continue;
    }
    try {
      marks.push(placeMark(solid, source, depth, refractiveIndex));
    } catch (thrown) {
      if (!isAppError(thrown, "bad-input")) throw thrown;
      outside += 1;
    }
  }
  return { marks, withoutDepth, outside };
}
