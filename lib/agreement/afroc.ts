import { computeBootstrapIntervals } from "@/lib/agreement/bootstrap-interval";
import { type FreeResponseCase, listMarkWeights } from "@/lib/agreement/free-response";
import { type Statistic, toUndefined } from "@/lib/agreement/statistic";
import { createSeededRandom } from "@/lib/base/seeded-random";

export interface AfrocOptions {
  /** True for wAFROC: each stone counts alike, its marks by weight. False: each reference mark counts alike. */
  readonly weighted: boolean;
  /** Whose surest stray is the rival: that of clean readings only, or of all (AFROC1, where too few are clean). */
  readonly rivals: "clean" | "all";
  readonly seed?: number | string;
  readonly resamples?: number;
}

export interface AfrocPoint {
  /** Share of rival readings with a stray at or above the threshold. */
  readonly strayShare: number;
  /** Share, or weight, of reference marks found at or above it. */
  readonly foundShare: number;
}

/** A case by places in the sorted list of all confidences; place 0 is "never marked". */
interface RankedCase {
  readonly isRival: boolean;
  readonly rival: number;
  readonly marks: readonly { readonly place: number; readonly weight: number }[];
}

const UNMARKED = Number.NEGATIVE_INFINITY;

function rankCases(
  cases: readonly FreeResponseCase[],
  options: AfrocOptions,
): { ranked: RankedCase[]; levels: number } {
  const rivalOf = (one: FreeResponseCase) =>
    one.strays.reduce((most, stray) => Math.max(most, stray), UNMARKED);
  const given = cases.flatMap((one) => [
    rivalOf(one),
    ...one.marks.map((mark) => mark.confidence ?? UNMARKED),
  ]);
  const sorted = [...new Set([UNMARKED, ...given])].sort((a, b) => a - b);
  const places = new Map(sorted.map((confidence, place) => [confidence, place]));
  const ranked = cases.map((one): RankedCase => {
    const weights = options.weighted ? listMarkWeights(one) : one.marks.map(() => 1);
    return {
      isRival: options.rivals === "all" || one.marks.length === 0,
      rival: places.get(rivalOf(one)) ?? 0,
      marks: one.marks.map((mark, i) => ({
        place: places.get(mark.confidence ?? UNMARKED) ?? 0,
        weight: weights[i] ?? 0,
      })),
    };
  });
  return { ranked, levels: sorted.length };
}

/** How many rivals, and how much reference weight, lie at each place, for `drawn[i]` copies of case i. */
function tallyPlaces(ranked: readonly RankedCase[], levels: number, drawn: ArrayLike<number>) {
  const rivals = new Float64Array(levels);
  const found = new Float64Array(levels);
  for (let i = 0; i < ranked.length; i += 1) {
    const one = ranked[i];
    const times = drawn[i] ?? 0;
    if (!one || times === 0) continue;
    if (one.isRival) rivals[one.rival] = (rivals[one.rival] ?? 0) + times;
    for (const { place, weight } of one.marks) found[place] = (found[place] ?? 0) + times * weight;
  }
  return { rivals, found };
}

/** Share of pairs (rival, reference mark) in which the mark is the surer one, ties half; NaN without pairs. */
function computeArea(rivals: Float64Array, found: Float64Array): number {
  let below = 0;
  let area = 0;
  let weight = 0;
  for (let place = 0; place < rivals.length; place += 1) {
    const here = rivals[place] ?? 0;
    area += (found[place] ?? 0) * (below + here / 2);
    weight += found[place] ?? 0;
    below += here;
  }
  return below * weight > 0 ? area / (below * weight) : Number.NaN;
}

/**
 * The area under the alternative free-response curve, or the weighted one (AFROC: Chakraborty and Winter 1990; JAFROC's
 * figure of merit: Chakraborty and Berbaum 2004; definitions as in check values 5.1 and 5.2): the chance that a reference
 * mark is surer than the surest stray of a rival reading, ties half, an overlooked mark and a reading without strays
 * both counting as surer than nothing. 1 only if every reference mark outranks every stray. Percentile bootstrap over
 * readings, seeded. Undefined without a reference mark and without a rival reading.
 */
export function computeAfroc(cases: readonly FreeResponseCase[], options: AfrocOptions): Statistic {
  const { ranked, levels } = rankCases(cases, options);
  if (!ranked.some((one) => one.marks.length > 0))
    return toUndefined("no reference mark was there to be found");
  if (!ranked.some((one) => one.isRival)) return toUndefined("no reading of a stone without reference marks");
  const once = cases.map(() => 1);
  const all = tallyPlaces(ranked, levels, once);
  const value = computeArea(all.rivals, all.found);
  const [interval] = computeBootstrapIntervals({
    units: once,
    statistics: 1,
    measure: (drawn, into) => {
      const { rivals, found } = tallyPlaces(ranked, levels, drawn);
      into[0] = computeArea(rivals, found);
    },
    random: createSeededRandom(options.seed ?? "afroc"),
    ...(options.resamples === undefined ? {} : { resamples: options.resamples }),
  });
  if (!interval || interval.high - interval.low < 1e-12) return { value, low: 0, high: 1 };
  return { value, low: Math.min(value, interval.low), high: Math.max(value, interval.high) };
}

/** The points of the curve, from (0, 0) to (1, 1), one for each confidence given, surest first. Empty as `computeAfroc`. */
export function listAfrocPoints(cases: readonly FreeResponseCase[], options: AfrocOptions): AfrocPoint[] {
  const { ranked, levels } = rankCases(cases, options);
  const { rivals, found } = tallyPlaces(
    ranked,
    levels,
    cases.map(() => 1),
  );
  const allRivals = rivals.reduce((sum, count) => sum + count, 0);
  const allFound = found.reduce((sum, weight) => sum + weight, 0);
  if (allRivals === 0 || allFound === 0) return [];
  const points: AfrocPoint[] = [{ strayShare: 0, foundShare: 0 }];
  let strays = 0;
  let weight = 0;
  for (let place = levels - 1; place >= 0; place -= 1) {
    strays += rivals[place] ?? 0;
    weight += found[place] ?? 0;
    points.push({ strayShare: strays / allRivals, foundShare: weight / allFound });
  }
  return points;
}
