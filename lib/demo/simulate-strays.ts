/** What a simulated student draws that is not in the stone (see student-skill: invented for the demo). */
import type { DraftMark } from "@/lib/demo/draft-mark";
import { drawCount } from "@/lib/demo/draw-count";
import { drawPatch, scatterShape } from "@/lib/demo/draw-shape";
import type { FeatureImage } from "@/lib/demo/feature-image";
import { getFeatureSize } from "@/lib/demo/measure-feature";
import type { SimulationTerms } from "@/lib/demo/simulation-terms";
import { fromClockDeg, type Point, VIEWS, type View } from "@/lib/gem/point";
import type { Shape } from "@/lib/plot/shape";

const FEWEST_BURST_DOTS = 6;
const MOST_BURST_DOTS = 12;
/** How far out a metal reflection is seen, as a share of the way to the girdle, and how large it looks. */
const GLINT_RIM = 0.955;
const GLINT_SIZE = 0.03;
/** The tweezers' jaws are never quite opposite: standard deviation in degrees. */
const GLINT_SCATTER_DEG = 4;
/** Strays smaller than this are drawn as dots. */
const DOT_SIZE = 0.02;

const stray = (view: View, characteristic: string, shape: Shape, origin: DraftMark["origin"]): DraftMark => ({
  view,
  characteristic,
  shape,
  confidence: 2,
  origin,
  burst: null,
});

/** A point anywhere on a view but the outermost tenth, evenly by area. */
function drawPlace({ random }: SimulationTerms): Point {
  const angle = 2 * Math.PI * random.next();
  const radius = 0.45 * Math.sqrt(random.next());
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

function drawDust(terms: SimulationTerms, burst: number | null, view: View): DraftMark {
  const characteristic = terms.random.chance(0.85) ? "pinpoint" : "crystal";
  const shape: Shape = { kind: "dot", at: [...drawPlace(terms)] };
  return { ...stray(view, characteristic, shape, { kind: "stray", cause: "dust", of: null }), burst };
}

/** Dust: bursts of quick dots and single ones; a stone that was cleaned shows neither. */
export function simulateDust(terms: SimulationTerms, isCleaned: boolean): DraftMark[] {
  if (isCleaned) return [];
  const { random, skill } = terms;
  const bursts = Array.from({ length: drawCount(random, skill.dustBurstsPerPlot) }, (_, burst) => {
    const view = random.chance(0.8) ? "crown" : "pavilion";
    const dots = FEWEST_BURST_DOTS + random.int(MOST_BURST_DOTS - FEWEST_BURST_DOTS + 1);
    return Array.from({ length: dots }, () => drawDust(terms, burst, view));
  });
  const single = Array.from({ length: drawCount(random, skill.dustDotsPerPlot) }, () =>
    drawDust(terms, null, random.pick(VIEWS)),
  );
  return [...bursts.flat(), ...single];
}

/** Takes one image out of the list, the stronger the likelier. */
function takeImage({ random }: SimulationTerms, images: FeatureImage[]): FeatureImage | null {
  let mark = random.next() * images.reduce((sum, { strength }) => sum + strength, 0);
  const index = images.findIndex(({ strength }) => {
    mark -= strength;
    return mark < 0;
  });
  return images.splice(Math.max(0, index), 1)[0] ?? null;
}

/** Echoes: reflected images of features that were seen, drawn as if they were features of their own. */
export function simulateEchoes(terms: SimulationTerms, seen: ReadonlySet<string>): DraftMark[] {
  const { random, skill, stone } = terms;
  return stone.marks.flatMap((feature) => {
    if (!seen.has(feature.id)) return [];
    const left = terms.images.filter(({ reference, bounces }) => reference === feature.id && bounces > 0);
    const size = getFeatureSize(feature.shape) * 0.8;
    const count = Math.min(left.length, drawCount(random, skill.echoesPerFeature));
    return Array.from({ length: count }, () => takeImage(terms, left)).flatMap((image) => {
      if (image === null) return [];
      const shape: Shape =
        size < DOT_SIZE ? { kind: "dot", at: [...image.at] } : drawPatch(random, image.at, size);
      const origin = { kind: "stray", cause: "echo", of: feature.id } as const;
      const steadier = { ...skill, scatter: skill.scatter * 0.7 };
      return [stray(image.view, feature.characteristic, scatterShape(random, shape, steadier), origin)];
    });
  });
}

/** Glints: the jaws of the tweezers at two opposite places of the rim, or a prong; now and then only one jaw. */
export function simulateGlints(terms: SimulationTerms): DraftMark[] {
  const { random, skill, stone } = terms;
  return Array.from({ length: drawCount(random, skill.glintsPerPlot) }, () => {
    const view = random.chance(0.75) ? "crown" : "pavilion";
    const prongs = stone.prongsDeg;
    const gripDeg = 360 * random.next();
    const clocks = prongs.length > 0 ? [random.pick(prongs)] : [gripDeg, gripDeg + 180];
    const seen = clocks.length === 2 && random.chance(0.25) ? clocks.slice(0, 1) : clocks;
    return seen.map((clockDeg) => {
      const place = fromClockDeg(view, clockDeg + random.normal(0, GLINT_SCATTER_DEG), 0.5 * GLINT_RIM);
      const shape = drawPatch(random, place, GLINT_SIZE);
      const origin = { kind: "stray", cause: "glint", of: null } as const;
      return stray(view, random.pick(["feather", "chip", "natural"]), shape, origin);
    });
  }).flat();
}

/** Decoys that the student falls for, and marks with nothing behind them. */
export function simulateBeliefs(terms: SimulationTerms): DraftMark[] {
  const { random, skill, stone } = terms;
  const decoys = stone.decoys
    .filter(() => random.chance(skill.gullible))
    .map(({ id, view, cause, shape }) => {
      const origin = { kind: "stray", cause, of: id } as const;
      const steady = { ...skill, scatter: skill.scatter * 0.6 };
      return stray(view, "crystal", scatterShape(random, shape, steady), origin);
    });
  const imagined = Array.from({ length: drawCount(random, skill.imaginedPerPlot) }, () => {
    const place = drawPlace(terms);
    const shape = drawPatch(random, place, 0.025 + 0.04 * random.next());
    const origin = { kind: "stray", cause: "unexplained", of: null } as const;
    return stray(random.pick(VIEWS), random.pick(["crystal", "cloud", "feather"]), shape, origin);
  });
  return [...decoys, ...imagined];
}
