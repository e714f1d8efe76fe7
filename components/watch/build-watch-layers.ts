/** The overlays of a bench that is looked on at: the reference, and the plot so far. Pure. */
import { buildReplayLayers } from "@/components/debrief/build-replay-layers";
import type { LayerItem, OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import { getMiddle } from "@/lib/editor/measure-shape";
import type { Solid } from "@/lib/gem/build-solid";
import { locatePoint } from "@/lib/gem/locate-point";
import type { BenchWatchView } from "@/lib/plot/staff-view";

/** The plot as it stands, numbered as on the student's bench. */
export function buildPlotLayer(watch: BenchWatchView, solid: Solid): OverlayLayer {
  const [layer] = buildReplayLayers(watch.plot.marks, watch.characteristics, solid);
  const items = (layer?.items ?? []).map((item): LayerItem => ({ ...item, side: "plotted" }));
  return { id: "plot", label: "Plot so far", items };
}

/** The reference's marks, without numbers so that none is taken for a plotted one; none without a reference. */
export function buildReferenceLayer(watch: BenchWatchView, solid: Solid): OverlayLayer {
  const byName = new Map(watch.characteristics.map((one) => [one.name, one]));
  const items = (watch.reference?.marks ?? []).map((mark): LayerItem => {
    const known = byName.get(mark.characteristic);
    return {
      key: `reference:${mark.id}`,
      view: mark.view,
      shape: mark.shape,
      style: known?.class ?? "inside",
      callout: null,
      side: "reference",
      words: `${known?.label ?? mark.characteristic}, ${locatePoint(solid, mark.view, getMiddle(mark.shape)).words}`,
    };
  });
  return { id: "reference", label: "Reference", items };
}
