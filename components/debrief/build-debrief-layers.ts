/** The overlays of a debrief: reference, plot, what explains the strays, tolerance and decoys. Pure. */
import type { DebriefRow, Outcome } from "@/components/debrief/debrief-row";
import { toMarkKey, toReferenceKey } from "@/components/debrief/debrief-row";
import type { EchoWay } from "@/components/debrief/find-echo-ways";
import { layShape, type ViewLayings } from "@/components/debrief/lay-mark";
import { traceTolerance } from "@/components/debrief/trace-tolerance";
import type { LayerItem, LayerLink, OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import { getMiddle } from "@/lib/editor/measure-shape";
import { VIEWS } from "@/lib/gem/point";
import type { ReferenceMark } from "@/lib/plot/mark";
import type { DebriefView } from "@/lib/plot/student-view";

const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  found: "found",
  overlooked: "overlooked",
  stray: "stray",
  "set-aside": "set aside",
};

const toWords = ({ title, place, outcome }: DebriefRow) => `${title}, ${place}, ${OUTCOME_WORDS[outcome]}`;

function drawPlot(view: DebriefView, rows: readonly DebriefRow[], layings: ViewLayings): LayerItem[] {
  return view.plot.marks.flatMap((mark) => {
    const row = rows.find(({ key }) => key === toMarkKey(mark.id));
    if (row === undefined) return [];
    return {
      key: row.key,
      view: mark.view,
      shape: layShape(mark.view, mark.shape, layings[mark.view]),
      style: row.outcome,
      callout: row.callout,
      side: "plotted",
      words: toWords(row),
    };
  });
}

function drawReferenceMark(mark: ReferenceMark, rows: readonly DebriefRow[]): LayerItem {
  const key = toReferenceKey(mark.id);
  const own = rows.find((row) => row.key === key);
  const partner = rows.find((row) => row.partnerKey === key);
  return {
    key,
    view: mark.view,
    shape: mark.shape,
    style: own !== undefined ? "overlooked" : partner?.outcome === "found" ? "found" : "set-aside",
    callout: own?.callout ?? null,
    side: "reference",
    words: own !== undefined ? toWords(own) : `reference: ${mark.characteristic.replaceAll("-", " ")}`,
  };
}

/** From each reference mark to the mark that found it, where both lie in the same view. */
function linkFound(view: DebriefView, plot: readonly LayerItem[]): LayerLink[] {
  return view.result.found.flatMap(({ mark, reference }) => {
    const drawn = plot.find(({ key }) => key === toMarkKey(mark));
    const of = view.reference.marks.find(({ id }) => id === reference);
    if (drawn === undefined || of === undefined || of.view !== drawn.view) return [];
    const key = `found:${reference}:${mark}`;
    const [from, to] = [getMiddle(of.shape), getMiddle(drawn.shape)];
    return { key, view: drawn.view, style: "found", from, to };
  });
}

/** From each stray to what explains it. */
function linkStrays(view: DebriefView, plot: readonly LayerItem[]): LayerLink[] {
  return view.detail.strays.flatMap(({ mark, points }) => {
    const drawn = plot.find(({ key }) => key === toMarkKey(mark));
    if (drawn === undefined) return [];
    return points.map((to, index): LayerLink => {
      const key = `stray:${mark}:${index}`;
      return { key, view: drawn.view, style: "stray", from: getMiddle(drawn.shape), to };
    });
  });
}

/** The way of the light behind each echo, from where it is seen to the inclusion. */
function linkEchoWays(ways: readonly EchoWay[]): LayerLink[] {
  return ways.flatMap(({ mark, view, way }) =>
    way.slice(1).map((to, index): LayerLink => {
      const from = way[index] ?? to;
      return { key: `way:${mark}:${index}`, view, style: "stray", from, to };
    }),
  );
}

function drawTolerance(view: DebriefView): LayerItem[] {
  return view.reference.marks.flatMap((mark) =>
    ([view.near, view.far] as const).map((reach, index): LayerItem => {
      const points = traceTolerance(mark.shape, reach).map(([x, y]): [number, number] => [x, y]);
      return {
        key: `${index === 0 ? "near" : "far"}:${mark.id}`,
        view: mark.view,
        shape: { kind: "outline", points },
        style: "set-aside",
        callout: null,
        words: `${reach} girdle widths round the reference’s ${mark.characteristic.replaceAll("-", " ")}`,
      };
    }),
  );
}

/** Traced when it is first looked at: it is hidden at first, and takes longer than all the rest. */
function createToleranceLayer(view: DebriefView): OverlayLayer {
  let traced: readonly LayerItem[] | null = null;
  return {
    id: "tolerance",
    label: "Tolerance",
    isShown: false,
    get items() {
      traced ??= drawTolerance(view);
      return traced;
    },
  };
}

/** The overlays, from the bottom up. `layings` say how the plot is laid on the reference, `ways` how echoes came about. */
export function buildDebriefLayers(
  view: DebriefView,
  rows: readonly DebriefRow[],
  layings: ViewLayings,
  plotLabel: string,
  ways: readonly EchoWay[] = [],
): OverlayLayer[] {
  const plot = drawPlot(view, rows, layings);
  const { turnDeg } = view.result.alignment;
  const isCounted = VIEWS.every((one) => layings[one].turnDeg === turnDeg && !layings[one].mirrored);
  const layers: OverlayLayer[] = [
    createToleranceLayer(view),
    {
      id: "reference",
      label: "Reference",
      items: view.reference.marks.map((mark) => drawReferenceMark(mark, rows)),
    },
    {
      id: "plot",
      label: plotLabel,
      items: plot,
      links: isCounted ? [...linkFound(view, plot), ...linkStrays(view, plot)] : [],
    },
  ];
  const traced = isCounted ? linkEchoWays(ways) : [];
  if (traced.length > 0) layers.push({ id: "echo-ways", label: "Paths of echoes", items: [], links: traced });
  if (view.reference.decoys.length === 0) return layers;
  const decoys = view.reference.decoys.map(
    ({ id, view: decoyView, cause, shape }): LayerItem => ({
      key: `decoy:${id}`,
      view: decoyView,
      shape,
      style: "decoy",
      callout: null,
      side: "reference",
      words: `a place that misleads: ${cause}`,
    }),
  );
  return [...layers, { id: "decoys", label: "Places that mislead", items: decoys, isShown: false }];
}
