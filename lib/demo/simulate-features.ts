/** What a simulated student draws of what is in the stone (see student-skill: invented for the demo). */
import { getDetectionChance } from "@/lib/demo/detection-chance";
import type { DraftMark } from "@/lib/demo/draft-mark";
import { drawPatch, scatterShape } from "@/lib/demo/draw-shape";
import type { FeatureImage } from "@/lib/demo/feature-image";
import { getFeatureCentre, getFeatureSize } from "@/lib/demo/measure-feature";
import { nameFeature } from "@/lib/demo/name-feature";
import type { SimulationTerms } from "@/lib/demo/simulation-terms";
import { splitShape } from "@/lib/demo/split-shape";
import { toOtherView } from "@/lib/gem/point";
import type { ReferenceMark } from "@/lib/plot/mark";
import { mapVertices, type Shape } from "@/lib/plot/shape";

/** Pinpoints nearer than this to one another (girdle widths) can be taken for one cloud. */
const MERGE_REACH = 0.09;
/** Only what is longer than this is drawn in pieces. */
const FRAGMENT_SIZE = 0.08;

/** A feature as it is seen in the other view: about its direct image there, or straight through the stone. */
export function toOtherViewShape(feature: ReferenceMark, images: readonly FeatureImage[]): Shape {
  const through = mapVertices(feature.shape, toOtherView);
  const direct = images.find(
    ({ reference, view, bounces }) => reference === feature.id && view !== feature.view && bounces === 0,
  );
  if (direct === undefined) return through;
  const [cx, cy] = getFeatureCentre(through);
  return mapVertices(through, ([x, y]) => [x - cx + direct.at[0], y - cy + direct.at[1]]);
}

/** Groups of two pinpoints or more of one view, each within reach of another of its group. */
function listPinpointGroups(features: readonly ReferenceMark[]): ReferenceMark[][] {
  const left = new Set(
    features.filter(({ characteristic, optional }) => characteristic === "pinpoint" && !optional),
  );
  const groups: ReferenceMark[][] = [];
  for (const first of left) {
    left.delete(first);
    const group = [first];
    for (const member of group) {
      const [mx, my] = getFeatureCentre(member.shape);
      for (const other of left) {
        const [x, y] = getFeatureCentre(other.shape);
        if (other.view !== member.view || Math.hypot(x - mx, y - my) > MERGE_REACH) continue;
        left.delete(other);
        group.push(other);
      }
    }
    if (group.length > 1) groups.push(group);
  }
  return groups;
}

function drawMerged({ random, skill }: SimulationTerms, group: readonly ReferenceMark[]): DraftMark {
  const centres = group.map(({ shape }) => getFeatureCentre(shape));
  const x = centres.reduce((sum, [cx]) => sum + cx, 0) / centres.length;
  const y = centres.reduce((sum, [, cy]) => sum + cy, 0) / centres.length;
  const reach = Math.max(...centres.map(([cx, cy]) => Math.hypot(cx - x, cy - y)));
  const size = 2 * (reach + 0.02 + skill.scatter) * 1.25;
  return {
    view: group[0]?.view ?? "crown",
    characteristic: "cloud",
    shape: scatterShape(random, drawPatch(random, [x, y], size), { ...skill, sizeScatter: 0.1 }),
    confidence: 3,
    origin: { kind: "merged", references: group.map(({ id }) => id) },
    burst: null,
  };
}

/** One feature that was seen: whole, in pieces, in the other view, or in both. */
function drawFeature(terms: SimulationTerms, feature: ReferenceMark, chance: number): DraftMark[] {
  const { random, skill, characteristics, images } = terms;
  const characteristic = nameFeature(random, feature.characteristic, characteristics, skill);
  const confidence = Math.min(5, Math.max(1, Math.round(1.4 + 3 * chance + random.normal(0, 0.8))));
  const draft = { view: feature.view, characteristic, confidence, burst: null };
  const isInside = characteristics.get(feature.characteristic)?.class === "inside";
  const other = feature.view === "crown" ? "pavilion" : "crown";
  const drawOther = () => scatterShape(random, toOtherViewShape(feature, images), skill);
  if (isInside && random.chance(skill.otherView)) {
    const origin = { kind: "feature", reference: feature.id, view: "other" } as const;
    return [{ ...draft, view: other, shape: drawOther(), origin }];
  }
  const isLong = feature.shape.kind !== "dot" && getFeatureSize(feature.shape) > FRAGMENT_SIZE;
  const shape = scatterShape(random, feature.shape, skill);
  const pieces = isLong && random.chance(skill.fragments) ? splitShape(random, shape) : [shape];
  const drafts = pieces.map((piece, index): DraftMark => {
    const origin = { kind: "stray", cause: "fragment", of: feature.id } as const;
    const whole = { kind: "feature", reference: feature.id, view: "own" } as const;
    return { ...draft, shape: piece, origin: index === 0 ? whole : origin };
  });
  if (isInside && random.chance(skill.doubling)) {
    const origin = { kind: "stray", cause: "double", of: feature.id } as const;
    drafts.push({ ...draft, view: other, shape: drawOther(), origin });
  }
  return drafts;
}

/** Drafts for the features that are seen, in the order of the reference; those that are not are left out. */
export function simulateFeatures(terms: SimulationTerms): DraftMark[] {
  const { random, stone, skill } = terms;
  const merged = listPinpointGroups(stone.marks).filter(() => random.chance(skill.merging));
  const isMerged = new Set(merged.flat());
  const drafts = stone.marks.flatMap((feature) => {
    const chance = getDetectionChance(feature, skill);
    if (isMerged.has(feature) || !random.chance(chance)) return [];
    return drawFeature(terms, feature, chance);
  });
  return [...drafts, ...merged.map((group) => drawMerged(terms, group))];
}
