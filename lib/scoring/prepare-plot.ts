import { VIEWS, type View } from "@/lib/gem/point";
import { compareIds } from "@/lib/plot/compare-ids";
import type { PlottedMark } from "@/lib/plot/mark";
import type { Plot } from "@/lib/plot/plots-file";
import { type MarkGeometry, measureShape, moveGeometry } from "@/lib/scoring/mark-geometry";
import { AS_DRAWN, type Reading, toMotion } from "@/lib/scoring/reading";

/** One plotted mark with all that is measured of it. */
export interface PlottedModel {
  readonly mark: PlottedMark;
  readonly geometry: MarkGeometry;
}

/** The marks of a plot, measured, in the order of their ids. An empty plot gives an empty list. */
export function preparePlot(plot: Plot): readonly PlottedModel[] {
  return [...plot.marks]
    .sort((a, b) => compareIds(a.id, b.id))
    .map((mark) => ({ mark, geometry: measureShape(mark.shape) }));
}

/** The plot laid on the reference by a reading: the reference stays where it is, the plot is turned. */
export function layPlot(plotted: readonly PlottedModel[], reading: Reading): readonly PlottedModel[] {
  if (reading.turnDeg === AS_DRAWN.turnDeg && !reading.mirrored) return plotted;
  const [crown, pavilion] = VIEWS.map((view) => toMotion(view, reading));
  const motions = { crown, pavilion } as Record<View, ReturnType<typeof toMotion>>;
  return plotted.map(({ mark, geometry }) => ({
    mark,
    geometry: moveGeometry(geometry, motions[mark.view]),
  }));
}
