/** What one plotted mark is worth for one reference mark, part by part (SPEC 2). All parts lie in 0…1. */
import type { CharacteristicTable } from "@/lib/plot/characteristic";
import type { Rubric } from "@/lib/plot/rubric";

/** Location: 1 within `near`, 0 from `far` on, a straight line between; distances in girdle widths. */
export function rateLocation(distance: number, { near, far }: Pick<Rubric, "near" | "far">): number {
  if (distance <= near) return 1;
  return distance >= far ? 0 : (far - distance) / (far - near);
}

/** The type credit of two characteristics that are like one another. */
export const LIKE_TYPE = 0.5;

/** Type: 1 for the same characteristic, 0.5 for two that are like one another, else 0. */
export function rateType(reference: string, plotted: string, characteristics: CharacteristicTable): number {
  if (reference === plotted) return 1;
  return characteristics.get(reference)?.like.includes(plotted) ? LIKE_TYPE : 0;
}

const LN_4 = Math.log(4);

/** Extent, from the logarithms of the two: 1 for the same, 0 where one is four times the other or more. */
export function rateExtent(logReference: number, logPlotted: number): number {
  return Math.max(0, 1 - Math.abs(logPlotted - logReference) / LN_4);
}

/** The value of a pair but for its location, which it is multiplied by. */
export function rateLikeness(type: number, extent: number, { parts }: Pick<Rubric, "parts">): number {
  return parts.location + parts.type * type + parts.extent * extent;
}
