import { isInsideOutline } from "@/lib/gem/is-inside-outline";
import type { Solid } from "@/lib/gem/solid";
import { listVertices } from "@/lib/plot/shape";
import type { Reference } from "@/lib/plot/stone";

/** How many marks and decoys of a reference reach outside the girdle of a solid. None where either is missing. */
export function findLostMarks(reference: Reference | null, solid: Solid | null): number {
  if (reference === null || solid === null) return 0;
  return [...reference.marks, ...reference.decoys].filter(({ view, shape }) =>
    listVertices(shape).some((point) => !isInsideOutline(solid, view, point, 1e-6)),
  ).length;
}
