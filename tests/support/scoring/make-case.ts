/** Seeded stones and plots for the engine's tests and benchmarks: places, shapes and kinds at random within the girdle. */
import { createSeededRandom, type SeededRandom } from "@/lib/base/seeded-random";
import { toOtherView } from "@/lib/gem/point";
import { DEFAULT_CHARACTERISTICS } from "@/lib/plot/characteristic";
import { DEFAULT_SCALES } from "@/lib/plot/grades";
import type { PlottedMark, ReferenceMark } from "@/lib/plot/mark";
import type { Plot } from "@/lib/plot/plots-file";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { mapVertices, type Shape } from "@/lib/plot/shape";
import type { Reference, StoneBody } from "@/lib/plot/stone";
import type { ScoreInput } from "@/lib/scoring/score-plot";

const KINDS = ["crystal", "pinpoint", "feather", "cloud", "needle", "natural", "scratch"];

/** A round brilliant in the proportions of the format's example. */
export function makeBody(over: Partial<StoneBody> = {}): StoneBody {
  return {
    cut: "round-brilliant",
    proportions: {
      tablePct: 57,
      crownAngleDeg: 34.5,
      pavilionAngleDeg: 40.8,
      starPct: 50,
      lowerHalfPct: 77,
      girdlePct: 3,
      culetPct: 0,
      lengthToWidth: 1,
    },
    measurementsMm: [5.17, 5.2, 3.2],
    refractiveIndex: 2.417,
    prongsDeg: [],
    ...over,
  };
}

function makePlace(random: SeededRandom, radius: number): [number, number] {
  const [r, angle] = [radius * Math.sqrt(random.next()), 2 * Math.PI * random.next()];
  return [r * Math.cos(angle), r * Math.sin(angle)];
}

/** A dot, a stroke of a few points, or a rough outline about a place. */
export function makeShape(random: SeededRandom, [x, y]: readonly [number, number]): Shape {
  const kind = random.int(3);
  if (kind === 0) return { kind: "dot", at: [x, y] };
  const size = 0.01 + 0.05 * random.next();
  const start = 2 * Math.PI * random.next();
  if (kind === 1) {
    const [dx, dy] = [Math.cos(start), Math.sin(start)];
    const points = [-1, -0.4, 0.2, 1].map((t): [number, number] => [
      x + size * t * dx + 0.1 * size * random.normal(),
      y + size * t * dy + 0.1 * size * random.normal(),
    ]);
    return { kind: "stroke", points };
  }
  const points = Array.from({ length: 10 }, (_, k): [number, number] => {
    const angle = start + (2 * Math.PI * k) / 10;
    const radius = size * (0.7 + 0.3 * random.next());
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
  return { kind: "outline", points };
}

export interface ReferenceOptions {
  /** Share of marks without a depth. */
  readonly flat?: number;
  readonly optional?: number;
  /** How far out marks may lie, girdle widths. */
  readonly radius?: number;
}

/** A reference of so many marks with graded clarity and colour. */
export function makeReference(seed: string, count: number, options: ReferenceOptions = {}): Reference {
  const random = createSeededRandom(`reference ${seed}`);
  const { flat = 0.3, optional = 0, radius = 0.4 } = options;
  const marks = Array.from({ length: count }, (_, i): ReferenceMark => {
    const mark: ReferenceMark = {
      id: `r${i + 1}`,
      view: random.chance(0.7) ? "crown" : "pavilion",
      characteristic: random.pick(KINDS),
      shape: makeShape(random, makePlace(random, radius)),
      weight: 1 + random.int(3),
    };
    if (!random.chance(flat)) mark.depth = random.next();
    if (random.chance(optional)) mark.optional = true;
    return mark;
  });
  return { grades: { clarity: "SI1", colour: "H" }, marks, decoys: [] };
}

export interface PlotOptions {
  /** Standard deviation of each mark's place, girdle widths. */
  readonly scatter?: number;
  /** Share of the reference that is overlooked. */
  readonly overlooked?: number;
  /** Share that is taken for another characteristic. */
  readonly confused?: number;
  /** Share that is drawn in the other view. */
  readonly behind?: number;
  readonly strays?: number;
}

const shift = (shape: Shape, dx: number, dy: number) => mapVertices(shape, ([x, y]) => [x + dx, y + dy]);

/** A plot of a reference with errors and with strays anywhere. */
export function makePlot(seed: string, reference: Reference, options: PlotOptions = {}): Plot {
  const random = createSeededRandom(`plot ${seed}`);
  const { scatter = 0.02, overlooked = 0.2, confused = 0.2, behind = 0.05, strays = 0 } = options;
  const drawn = reference.marks.flatMap((mark): Omit<PlottedMark, "id">[] => {
    const moved = shift(mark.shape, random.normal(0, scatter), random.normal(0, scatter));
    const characteristic = random.chance(confused) ? random.pick(KINDS) : mark.characteristic;
    const isBehind = random.chance(behind);
    if (random.chance(overlooked)) return [];
    const view = mark.view === "crown" ? "pavilion" : "crown";
    return [
      isBehind
        ? { view, characteristic, shape: mapVertices(moved, toOtherView) }
        : { view: mark.view, characteristic, shape: moved },
    ];
  });
  const more = Array.from({ length: strays }, (): Omit<PlottedMark, "id"> => {
    const characteristic = random.pick(KINDS);
    const view = random.chance(0.7) ? "crown" : "pavilion";
    return { view, characteristic, shape: makeShape(random, makePlace(random, 0.42)) };
  });
  let atMs = 0;
  const marks = random.shuffle([...drawn, ...more]).map((mark, i): PlottedMark => {
    atMs += random.int(4000);
    return { id: `m${i + 1}`, ...mark, atMs, ...(random.chance(0.5) ? { proofs: ["wiped"] } : {}) };
  });
  return { grades: { clarity: "VS2", colour: "H" }, marks };
}

/** Everything that the engine asks for, with the defaults where nothing is given. */
export function makeInput(reference: Reference, plot: Plot, over: Partial<ScoreInput> = {}): ScoreInput {
  return {
    stoneId: "S-1",
    by: "student-1",
    stone: makeBody(),
    reference,
    plot,
    rubric: DEFAULT_RUBRIC,
    scales: DEFAULT_SCALES,
    characteristics: DEFAULT_CHARACTERISTICS,
    ...over,
  };
}
