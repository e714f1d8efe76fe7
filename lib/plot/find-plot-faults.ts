/** Faults that lie between things that each look right alone: ids, names and places against the stone. */
import type { Fault } from "@/lib/base/app-error";
import { isAppError } from "@/lib/base/app-error";
import { getSolid, type Solid } from "@/lib/gem/build-solid";
import { isInsideOutline } from "@/lib/gem/is-inside-outline";
import type { CharacteristicTable } from "@/lib/plot/characteristic";
import { findGradeFaults, type Scales } from "@/lib/plot/grades";
import type { Decoy, PlottedMark, ReferenceMark } from "@/lib/plot/mark";
import type { Plot } from "@/lib/plot/plots-file";
import type { Shape } from "@/lib/plot/shape";
import type { Reference, StoneBody } from "@/lib/plot/stone";

/** What marks and grades are held against. */
export interface PlotTerms {
  readonly characteristics: CharacteristicTable;
  readonly scales: Scales;
}

/** A point on the girdle itself is on the stone; this much beyond it is a rounding, not a place (girdle widths). */
const OUTLINE_TOLERANCE = 1e-6;

/** Repeated ids in a list, each reported where it comes again. */
export function findRepeatedIds(list: readonly { readonly id: string }[], path: string): Fault[] {
  const seen = new Set<string>();
  return list.flatMap(({ id }, index) => {
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    return [{ path: `${path}[${index}].id`, message: `the id "${id}" stands here a second time` }];
  });
}

/** The solid of a stone, or the faults of its proportions under `path`. */
export function findSolid(stone: StoneBody, path: string): { solid: Solid | null; faults: Fault[] } {
  try {
    return { solid: getSolid(stone.cut, stone.proportions), faults: [] };
  } catch (thrown) {
    if (!isAppError(thrown, "bad-input")) throw thrown;
    const at = path === "" ? "proportions" : `${path}.proportions`;
    const faults = thrown.faults.map((fault) => ({ path: `${at}.${fault.path}`, message: fault.message }));
    return { solid: null, faults: faults.length > 0 ? faults : [{ path: at, message: thrown.message }] };
  }
}

function findShapeFaults(solid: Solid, view: "crown" | "pavilion", shape: Shape, path: string): Fault[] {
  const message = "lies outside the girdle";
  if (shape.kind === "dot") {
    return isInsideOutline(solid, view, shape.at, OUTLINE_TOLERANCE) ? [] : [{ path: `${path}.at`, message }];
  }
  return shape.points.flatMap((point, index) =>
    isInsideOutline(solid, view, point, OUTLINE_TOLERANCE)
      ? []
      : [{ path: `${path}.points[${index}]`, message }],
  );
}

function findMarkFaults(
  marks: readonly (PlottedMark | ReferenceMark | Decoy)[],
  solid: Solid | null,
  terms: PlotTerms,
  path: string,
): Fault[] {
  const faults = findRepeatedIds(marks, path);
  marks.forEach((mark, index) => {
    const at = `${path}[${index}]`;
    if ("characteristic" in mark && !terms.characteristics.has(mark.characteristic)) {
      faults.push({
        path: `${at}.characteristic`,
        message: `"${mark.characteristic}" is not a known characteristic`,
      });
    }
    if (solid !== null) faults.push(...findShapeFaults(solid, mark.view, mark.shape, `${at}.shape`));
  });
  return faults;
}

const join = (path: string, key: string) => (path === "" ? key : `${path}.${key}`);

/** All faults of a reference on its stone; `solid` null skips the places (the proportions are at fault already). */
export function findReferenceFaults(
  reference: Reference,
  solid: Solid | null,
  terms: PlotTerms,
  path = "",
): Fault[] {
  return [
    ...findGradeFaults(reference.grades, terms.scales).map(({ property, message }) => ({
      path: join(path, `grades.${property}`),
      message,
    })),
    ...findMarkFaults(reference.marks, solid, terms, join(path, "marks")),
    ...findMarkFaults(reference.decoys, solid, terms, join(path, "decoys")),
  ];
}

/** All faults of a plot on its stone. */
export function findPlotFaults(plot: Plot, solid: Solid | null, terms: PlotTerms, path = ""): Fault[] {
  return [
    ...findGradeFaults(plot.grades, terms.scales).map(({ property, message }) => ({
      path: join(path, `grades.${property}`),
      message,
    })),
    ...findMarkFaults(plot.marks, solid, terms, join(path, "marks")),
  ];
}
