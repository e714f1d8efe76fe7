/**
 * Whether a feature is seen at all. Invented for the demo (see student-skill): a logistic curve over size, contrast,
 * depth and view, so that small, pale and deep things are missed and large dark ones are not.
 */
import { getFeatureSize } from "@/lib/demo/measure-feature";
import type { StudentSkill } from "@/lib/demo/student-skill";
import type { ReferenceMark } from "@/lib/plot/mark";

/** A feature of this size (girdle widths) is neither helped nor hindered by it. */
const EVEN_SIZE = 0.02;
/** Added to the logit for each unit of ln(size / even size). */
const SIZE_SLOPE = 1.1;
/** What the whole depth of the stone takes from the logit. */
const DEPTH_SLOPE = 1.2;

/** How a characteristic stands out, added to the logit; 0 for those not named. */
const CONTRAST: Readonly<Record<string, number>> = {
  crystal: 0.9,
  knot: 0.6,
  feather: 0.5,
  cleavage: 0.5,
  chip: 0.4,
  needle: 0.2,
  cavity: 0.3,
  pinpoint: -0.3,
  cloud: -0.9,
  "twinning-wisp": -0.8,
  "internal-graining": -1.6,
  "grain-centre": -0.8,
  "surface-graining": -1.4,
  "polish-lines": -0.9,
  nick: -0.2,
  pit: -0.4,
  natural: -0.5,
  "rough-girdle": -0.6,
  "lizard-skin": -1,
};

/** Chance, 0…1, that a student with this skill sees the feature. */
export function getDetectionChance(feature: ReferenceMark, skill: StudentSkill): number {
  const logit =
    skill.eye +
    SIZE_SLOPE * Math.log(getFeatureSize(feature.shape) / EVEN_SIZE) +
    (CONTRAST[feature.characteristic] ?? 0) -
    DEPTH_SLOPE * (feature.depth ?? 0) +
    (feature.view === "pavilion" ? skill.pavilionCare : 0);
  return 1 / (1 + Math.exp(-logit));
}
