/** Building stones, and finding the images of their inclusions, with the growth over bounces and facets. */
import { createSeededRandom } from "@/lib/base/seeded-random";
import { buildSolid, type Solid } from "@/lib/gem/build-solid";
import { CUT_NAMES, type CutName } from "@/lib/gem/cut-name";
import { findImages } from "@/lib/gem/find-images";
import { placeInclusion } from "@/lib/gem/place-inclusion";
import { VIEWS } from "@/lib/gem/point";
import { DIAMOND_INDEX } from "@/lib/gem/refraction";
import { spreadBeams } from "@/lib/gem/spread-beams";
import type { Vec3 } from "@/lib/gem/vec3";
import type { Figure } from "@/tests/bench/run";

/** Median of timed runs in milliseconds, after runs that are not timed; each run gets a fresh input. */
function timeMedian<T>(prepare: (run: number) => T, work: (input: T) => unknown, runs: number): number {
  for (let run = 0; run < 5; run += 1) work(prepare(run));
  const times = Array.from({ length: runs }, (_, run) => {
    const input = prepare(run);
    const start = performance.now();
    work(input);
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)] ?? Number.NaN;
}

function scatterInclusions(solid: Solid, count: number): Vec3[] {
  const random = createSeededRandom("inclusions");
  return Array.from({ length: count }, () => {
    const [x, y] = random.pick(solid.outline);
    const share = random.next() * 0.9;
    return placeInclusion(solid, "crown", [x * share, y * share], 0.1 + 0.8 * random.next(), DIAMOND_INDEX);
  });
}

function findAll(solid: Solid, places: readonly Vec3[], maxBounces: number): number {
  const limits = { refractiveIndex: DIAMOND_INDEX, maxBounces };
  return places.reduce((sum, at) => sum + findImages(solid, at, limits).length, 0);
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function timeImages(name: string, cut: CutName, maxBounces: number, target: string): Figure[] {
  const solid = buildSolid(cut);
  const places = scatterInclusions(solid, 30);
  const fresh = timeMedian(
    () => buildSolid(cut),
    (stone) => findAll(stone, places, maxBounces),
    9,
  );
  const images = findAll(solid, places, maxBounces);
  const legs = VIEWS.flatMap((view) =>
    spreadBeams(solid, view, { refractiveIndex: DIAMOND_INDEX, maxBounces, minStrength: 0.1 }),
  ).length;
  const note = `${target}${images} images, ${legs} legs of beams, ${solid.facets.length} facets`;
  return [{ name, value: round(fresh), unit: "ms", note }];
}

/** The benchmark: figures of building and of images. */
export default async function benchGem(): Promise<Figure[]> {
  const built = timeMedian(
    () => null,
    () => buildSolid("round-brilliant"),
    60,
  );
  const solid = buildSolid("round-brilliant");
  const places = scatterInclusions(solid, 30);
  findAll(solid, places, 3);
  const again = timeMedian(
    () => null,
    () => findAll(solid, places, 3),
    30,
  );
  return [
    { name: "round brilliant built", value: round(built), unit: "ms", note: "target under 5 ms" },
    ...timeImages(
      "images of 30 inclusions, 3 bounces, new stone",
      "round-brilliant",
      3,
      "target under 100 ms; ",
    ),
    {
      name: "images of 30 inclusions, 3 bounces, stone seen before",
      value: round(again),
      unit: "ms",
      note: "the beams are remembered with the stone",
    },
    ...[1, 2, 4, 5, 6].flatMap((bounces) =>
      timeImages(`images of 30 inclusions, ${bounces} bounces, new stone`, "round-brilliant", bounces, ""),
    ),
    ...CUT_NAMES.filter((cut) => cut !== "custom" && cut !== "round-brilliant").flatMap((cut) =>
      timeImages(`images of 30 inclusions, 3 bounces, ${cut}`, cut, 3, ""),
    ),
  ];
}
