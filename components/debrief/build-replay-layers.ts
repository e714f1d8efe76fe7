/** A plot at one moment of its sitting, as an overlay. Pure. */
import type { LayerItem, OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import { toDrawnItem } from "@/components/plot-editor/subject-words";
import { getMiddle } from "@/lib/editor/measure-shape";
import { createDocument, listMarks } from "@/lib/editor/plot-document";
import type { Solid } from "@/lib/gem/build-solid";
import { locatePoint } from "@/lib/gem/locate-point";
import type { Characteristic } from "@/lib/plot/characteristic";
import type { PlottedMark } from "@/lib/plot/mark";

/** The marks as they stood then, as drawn, with the numbers that they bore. */
export function buildReplayLayers(
  marks: readonly PlottedMark[],
  characteristics: readonly Characteristic[],
  solid: Solid,
): OverlayLayer[] {
  const byName = new Map(characteristics.map((one) => [one.name, one]));
  const items = listMarks(createDocument(marks)).map(
    (mark, index): LayerItem => ({
      ...toDrawnItem(mark, index + 1, byName),
      view: mark.view,
      words: `${byName.get(mark.characteristic)?.label ?? mark.characteristic}, ${locatePoint(solid, mark.view, getMiddle(mark.shape)).words}`,
    }),
  );
  return [{ id: "then", label: "Plot at that moment", items }];
}
