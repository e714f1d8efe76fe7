import { VIEWS, type View } from "@/lib/gem/point";
import { compareIds } from "@/lib/plot/compare-ids";
import type { PlottedMark } from "@/lib/plot/mark";
import type { Plot } from "@/lib/plot/plots-file";
import { type MarkGeometry, type Motion, measureShape, moveGeometry } from "@/lib/scoring/mark-geometry";
import { AS_DRAWN, compareReadings, type Laying, toMotion } from "@/lib/scoring/reading";

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

/** The plot laid on the reference, each view by its reading: the reference stays where it is, the plot is turned. */
export function layPlot(plotted: readonly PlottedModel[], laying: Laying): readonly PlottedModel[] {
  const [crown, pavilion] = VIEWS.map((view) => {
    const reading = laying[view];
    return compareReadings(reading, AS_DRAWN) === 0 ? null : toMotion(view, reading);
  });
  if (crown === null && pavilion === null) return plotted;
  const motions = { crown, pavilion } as Record<View, Motion | null>;
  return plotted.map((model) => {
    const motion = motions[model.mark.view];
    return motion === null ? model : { mark: model.mark, geometry: moveGeometry(model.geometry, motion) };
  });
}
