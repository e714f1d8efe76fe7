import { layShape } from "@/components/debrief/lay-mark";
import { computeGospa, type Gospa } from "@/lib/agreement/gospa";
import { computeOspa } from "@/lib/agreement/ospa";
import { getDistance, getMiddle } from "@/lib/editor/measure-shape";
import type { Point, View } from "@/lib/gem/point";
import type { DebriefView } from "@/lib/plot/student-view";

/** `c`, girdle widths: from here on two marks are one overlooked and one stray. */
export const CUT_OFF_WIDTHS = 0.1;
/** `p`: at 1 the distances are plain means and sums. */
export const ORDER = 1;

interface Place {
  readonly view: View;
  readonly at: Point;
}

/** Places of different views are never the same place. */
function getPlaceDistance(reference: Place, plotted: Place): number {
  return reference.view === plotted.view ? getDistance(reference.at, plotted.at) : Number.POSITIVE_INFINITY;
}

/**
 * How far a plot is from its reference whatever the rubric says: between the middles of the marks, the plot laid as it was
 * read, without optional reference marks and what was set against them. OSPA (Schuhmacher, Vo and Vo 2008) and GOSPA
 * (Rahmathullah, García-Fernández and Svensson 2017), both in girdle widths. Two empty plots are 0 apart.
 */
export function measurePlotDistance({ plot, reference, result, detail }: DebriefView): {
  readonly ospa: number;
  readonly gospa: Gospa;
} {
  const { turnDeg } = result.alignment;
  const aside = new Set(detail.setAside.map(({ mark }) => mark));
  const references = reference.marks
    .filter(({ optional }) => optional !== true)
    .map(({ view, shape }): Place => ({ view, at: getMiddle(shape) }));
  const plotted = plot.marks
    .filter(({ id }) => !aside.has(id))
    .map(
      ({ view, shape }): Place => ({
        view,
        at: getMiddle(layShape(view, shape, { turnDeg, mirrored: false })),
      }),
    );
  const options = { distance: getPlaceDistance, cutOff: CUT_OFF_WIDTHS, order: ORDER };
  return {
    ospa: computeOspa(references, plotted, options),
    gospa: computeGospa(references, plotted, options),
  };
}
