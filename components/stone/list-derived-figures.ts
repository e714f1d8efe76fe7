/** What follows from a stone's proportions and measurements, for a reader to hold against the stone. Pure. */
import type { Solid } from "@/lib/gem/solid";

export interface DerivedFigure {
  readonly what: string;
  readonly value: string;
  /** A remark where what was measured and what was typed do not agree. */
  readonly remark?: string;
}

const toPct = (share: number) => `${(share * 100).toFixed(1)} %`;

/** A measured depth this far from the one that the proportions give is worth a second look. */
const DEPTH_REMARK = 0.015;

/** The measured depth as a share of the girdle width; for a round its mean diameter. */
export function getMeasuredDepth(cut: string, measurementsMm: readonly [number, number, number]): number {
  const [length, width, depth] = measurementsMm;
  return depth / (cut === "round-brilliant" ? (length + width) / 2 : width);
}

/** Facets as the trade counts them: those of the girdle left out. */
export function countFacets(solid: Solid): number {
  return solid.facets.filter(({ side }) => side !== "girdle").length;
}

/** Crown height, pavilion depth, total depth and facets of a solid; and the measured depth where it is known. */
export function listDerivedFigures(
  solid: Solid,
  measurementsMm?: readonly [number, number, number],
): DerivedFigure[] {
  const depth = solid.crownHeight + solid.girdleThickness + solid.pavilionDepth;
  const figures: DerivedFigure[] = [
    { what: "Crown height", value: toPct(solid.crownHeight) },
    { what: "Pavilion depth", value: toPct(solid.pavilionDepth) },
    { what: "Total depth", value: toPct(depth) },
    { what: "Facets", value: String(countFacets(solid)) },
  ];
  if (measurementsMm === undefined) return figures;
  const measured = getMeasuredDepth(solid.cut, measurementsMm);
  const off = measured - depth;
  const remark =
    Math.abs(off) < DEPTH_REMARK
      ? undefined
      : `${toPct(Math.abs(off))} ${off > 0 ? "deeper" : "shallower"} than the proportions give`;
  figures.push({
    what: "Measured depth",
    value: toPct(measured),
    ...(remark === undefined ? {} : { remark }),
  });
  return figures;
}
