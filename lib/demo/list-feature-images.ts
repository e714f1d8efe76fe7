import { isAppError } from "@/lib/base/app-error";
import type { FeatureImage } from "@/lib/demo/feature-image";
import { getFeatureCentre } from "@/lib/demo/measure-feature";
import { findImages } from "@/lib/gem/find-images";
import { placeInclusion } from "@/lib/gem/place-inclusion";
import type { Solid } from "@/lib/gem/solid";
import type { CharacteristicTable } from "@/lib/plot/characteristic";
import type { ReferenceMark } from "@/lib/plot/mark";
import type { Stone } from "@/lib/plot/stone";

function listImagesOf(stone: Stone, solid: Solid, feature: ReferenceMark): FeatureImage[] {
  const { refractiveIndex } = stone;
  if (feature.depth === undefined) return [];
  try {
    const centre = getFeatureCentre(feature.shape);
    const at = placeInclusion(solid, feature.view, centre, feature.depth, refractiveIndex);
    return findImages(solid, at, { refractiveIndex }).map((image) => ({
      reference: feature.id,
      view: image.view,
      at: image.at,
      bounces: image.bounces,
      strength: image.strength,
    }));
  } catch (thrown) {
    // The centre of a curved mark can lie off a stone that is not convex: it then shows no images.
    if (isAppError(thrown, "bad-input")) return [];
    throw thrown;
  }
}

/** Where each inside feature with a depth is seen, directly and by up to three reflections; none gives an empty list. */
export function listFeatureImages(
  stone: Stone,
  solid: Solid,
  characteristics: CharacteristicTable,
): FeatureImage[] {
  return stone.marks
    .filter(({ characteristic }) => characteristics.get(characteristic)?.class === "inside")
    .flatMap((feature) => listImagesOf(stone, solid, feature));
}
