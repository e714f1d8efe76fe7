/** The echoes of a reference's inside marks: where the stone shows them a second time. */
import { isAppError } from "@/lib/base/app-error";
import { traceEchoWay } from "@/lib/editor/trace-echo-way";
import { findImages } from "@/lib/gem/find-images";
import { placeInclusion } from "@/lib/gem/place-inclusion";
import type { Point, View } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";
import type { Vec3 } from "@/lib/gem/vec3";
import { getSampleCentre } from "@/lib/plot/get-sample-centre";
import type { ReferenceMark } from "@/lib/plot/mark";

/** Reflections that are followed, and the weakest image that is kept (design.md, command line). */
const LIMITS = { maxBounces: 3, minStrength: 0.1 };
/** A direct image in the mark's own view within this of the mark's centre is the mark itself (girdle widths). */
const OWN_PLACE = 1e-4;

/** An inside mark with a depth: all that its echoes follow from. */
export type EchoSource = Pick<ReferenceMark, "id" | "view" | "shape"> & { readonly depth: number };

/** A place where an inside mark is seen again. */
export interface PredictedEcho {
  /** Unique among the echoes of a stone. */
  readonly key: string;
  readonly markId: string;
  readonly view: View;
  /** In the view's frame. */
  readonly at: Point;
  /** Facets that reflect it; 0 for a second direct image in the mark's own view, refracted only. */
  readonly bounces: number;
  /** 0.1 … 1: the product of the reflectances on the way. */
  readonly strength: number;
  /** Names of the facets, the one that is looked through first: "star 3", "pavilion main 5". */
  readonly facets: readonly string[];
  /** From where it is seen by way of the facets to the inclusion, in the view's frame. */
  readonly way: readonly Point[];
}

/** Where the inclusion of a mark sits, or null where its centre lies outside a girdle that is not convex. */
function findPlace(solid: Solid, { view, shape, depth }: EchoSource, refractiveIndex: number): Vec3 | null {
  try {
    return placeInclusion(solid, view, getSampleCentre(shape), depth, refractiveIndex);
  } catch (thrown) {
    if (isAppError(thrown, "bad-input")) return null;
    throw thrown;
  }
}

/** The marks that echoes can be predicted for: inside ones with a depth. */
export function listEchoSources(
  marks: readonly ReferenceMark[],
  isInside: (characteristic: string) => boolean,
): EchoSource[] {
  return marks.flatMap(({ id, view, shape, depth, characteristic }) =>
    depth !== undefined && isInside(characteristic) ? [{ id, view, shape, depth }] : [],
  );
}

/**
 * The echoes of one mark, sorted as `findImages` sorts: reflected images in both views, and in its own view what
 * refraction alone shows a second time. The direct images in the other view are no echoes: they are the mark itself,
 * seen from behind. A mark that cannot be placed has none.
 */
export function listEchoes(solid: Solid, source: EchoSource, refractiveIndex: number): PredictedEcho[] {
  const place = findPlace(solid, source, refractiveIndex);
  if (place === null) return [];
  const [x, y] = getSampleCentre(source.shape);
  return findImages(solid, place, { refractiveIndex, ...LIMITS }).flatMap((image) => {
    const { view, at, bounces, strength, path } = image;
    if (bounces === 0 && view !== source.view) return [];
    if (bounces === 0 && Math.hypot(at[0] - x, at[1] - y) <= OWN_PLACE) return [];
    return {
      key: `echo:${source.id}:${view}:${path.join("-")}`,
      markId: source.id,
      view,
      at,
      bounces,
      strength,
      facets: path.map((index) => solid.facets[index]?.name ?? ""),
      way: traceEchoWay(solid, image, place, refractiveIndex) ?? [],
    };
  });
}
