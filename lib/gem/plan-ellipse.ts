import type { CutPlan } from "@/lib/gem/cut-plan";
import { toStation } from "@/lib/gem/lay-brilliant";
import { ELLIPSE_WEIGHT, type OutlineCurve } from "@/lib/gem/outline-curve";
import { planBrilliant } from "@/lib/gem/plan-brilliant";
import { getProportion, type Proportions } from "@/lib/gem/proportions";

/** A closed outline of four equal quarters, mirrored left-right and up-down, each through its square corner. */
export function layQuarters(halfWidth: number, halfLength: number, weight: number): OutlineCurve {
  const [w, l] = [halfWidth, halfLength];
  return [
    { from: [0, l], via: [w, l], to: [w, 0], weight },
    { from: [w, 0], via: [w, -l], to: [0, -l], weight },
    { from: [0, -l], via: [-w, -l], to: [-w, 0], weight },
    { from: [-w, 0], via: [-w, l], to: [0, l], weight },
  ];
}

function planQuarters(curve: OutlineCurve, proportions: Proportions): CutPlan {
  const stations = [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5].map((u) => toStation(curve, u));
  return planBrilliant({ curve, stations, isClosed: true, apex: [0, 0], starFrom: "table" }, proportions);
}

/**
 * The round brilliant: table, 8 stars, 8 bezels, 16 upper-girdle facets, 16 girdle facets, 16 lower-girdle
 * facets, 8 pavilion mains and the culet where it has a size. Azimuths, star and lower-half lengths as in
 * check-values.md 2.3: bezels and mains at 45k degrees, stars at 22.5 + 45k, halves at 11.25 + 22.5k.
 *
 * Where sources differ this is the choice: the table is measured corner to corner (ISO 24016, 8.3.3); the lower
 * half is measured as seen from above; the girdle has 16 facets, the coarsest that leaves every count of
 * check-values.md 2.2 as published (stones have 32 to 96 or a turned girdle, and those are not counted), with
 * its corners on the true circle, so that the solid lies within 1% of a girdle width of the round stone; the
 * drawn outline, and what counts as inside it, is the circle itself. The culet is measured flat to flat, and
 * the girdle where it is thickest. A length to width that is not quite 1 gives an ellipse with a mean diameter
 * of 1.
 */
export function planRoundBrilliant(proportions: Proportions): CutPlan {
  const ratio = getProportion(proportions, "lengthToWidth");
  return planQuarters(layQuarters(1 / (1 + ratio), ratio / (1 + ratio), ELLIPSE_WEIGHT), proportions);
}

/**
 * The oval: the round brilliant's pattern stretched along 12 to 6 o'clock, 57 facets and the culet
 * (check-values.md 2.4; 69 is also printed). Crown and pavilion angle are those at 3 and 9 o'clock; towards the
 * ends they flatten, as they must when one table and one culet serve the whole outline.
 */
export function planOval(proportions: Proportions): CutPlan {
  const ratio = getProportion(proportions, "lengthToWidth");
  return planQuarters(layQuarters(0.5, ratio / 2, ELLIPSE_WEIGHT), proportions);
}
