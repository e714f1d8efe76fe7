/** Adding counts of exercises that do not all grade on the same scales. */
import { type Counts, type GradeCounts, sumCounts } from "@/lib/agreement/counts";

/** Counts with the scales that their grades are on. */
export interface ScaledCounts {
  readonly counts: Counts;
  readonly scales: Readonly<Record<string, readonly string[]>>;
}

/** Counts of several sources as one, fit for `deriveRates(counts, scales)`. */
export interface JoinedCounts extends ScaledCounts {
  /** By property: how many graded plots are on another scale and are left out of `counts.grades`; 0 is not listed. */
  readonly otherScale: Readonly<Record<string, number>>;
}

interface ScaleGroup {
  readonly scale: readonly string[];
  graded: number;
}

/** The scale of a property that most graded plots are on; of two equal ones the earlier. */
function findCommonScale(parts: readonly ScaledCounts[], property: string): readonly string[] | undefined {
  const groups = new Map<string, ScaleGroup>();
  for (const { counts, scales } of parts) {
    const scale = scales[property];
    if (scale === undefined) continue;
    const key = JSON.stringify(scale);
    const group = groups.get(key) ?? { scale, graded: 0 };
    group.graded += counts.grades[property]?.graded ?? 0;
    groups.set(key, group);
  }
  const [first, ...others] = groups.values();
  return others.reduce((best, group) => (best && group.graded <= best.graded ? best : group), first)?.scale;
}

/**
 * Adds counts (`sumCounts`). Grades of one property can only be added on one scale: each property keeps the scale that
 * most of its graded plots are on, and plots graded on another are left out of that property's grades and counted in
 * `otherScale`; everything else of them is added. `on` fixes the scales instead: those of a whole that the parts belong to.
 * Nothing to add: `NO_COUNTS`, no scale but those of `on`.
 */
export function joinCounts(parts: readonly ScaledCounts[], on?: ScaledCounts["scales"]): JoinedCounts {
  const properties = [...new Set(parts.flatMap(({ scales }) => Object.keys(scales)))];
  const scales: Record<string, readonly string[]> = { ...on };
  const otherScale: Record<string, number> = {};
  const grades = parts.map((): Record<string, GradeCounts> => ({}));
  for (const property of properties) {
    const scale = on === undefined ? findCommonScale(parts, property) : on[property];
    if (scale === undefined) continue;
    scales[property] = scale;
    const key = JSON.stringify(scale);
    for (const [place, part] of parts.entries()) {
      const own = part.counts.grades[property];
      const kept = grades[place];
      if (own === undefined || kept === undefined) continue;
      if (JSON.stringify(part.scales[property]) === key) kept[property] = own;
      else otherScale[property] = (otherScale[property] ?? 0) + own.graded;
    }
  }
  const counts = sumCounts(parts.map((part, place) => ({ ...part.counts, grades: grades[place] ?? {} })));
  return { counts, scales, otherScale };
}
