import { useMemo } from "react";
import { buildDebriefLayers } from "@/components/debrief/build-debrief-layers";
import { type DebriefRow, listDebriefRows } from "@/components/debrief/debrief-row";
import { findEchoWays, hasDecoyedEchoes, toEchoInput } from "@/components/debrief/find-echo-ways";
import { layAlike } from "@/components/debrief/lay-mark";
import { layOtherwise } from "@/components/debrief/other-fit";
import { useEchoes } from "@/components/echoes/use-echoes";
import type { OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import { getSolid } from "@/lib/gem/build-solid";
import type { DebriefView } from "@/lib/plot/student-view";

/** What became of each mark, as rows and as overlays; the plot laid as it would fit, where that is asked for. */
export function useCompared(
  view: DebriefView,
  isRelaid: boolean,
  plotLabel: string,
): { rows: readonly DebriefRow[]; layers: readonly OverlayLayer[] } {
  const { cut, proportions } = view.stone;
  const solid = useMemo(() => getSolid(cut, proportions), [cut, proportions]);
  const { echoes } = useEchoes(useMemo(() => (hasDecoyedEchoes(view) ? toEchoInput(view) : null), [view]));
  const ways = useMemo(() => findEchoWays(view, solid, echoes), [view, solid, echoes]);
  const rows = useMemo(() => listDebriefRows(view, ways), [view, ways]);
  const { turnDeg } = view.result.alignment;
  const layers = useMemo(() => {
    const layings = isRelaid ? layOtherwise(view) : layAlike({ turnDeg, mirrored: false });
    return buildDebriefLayers(view, rows, layings, plotLabel, ways);
  }, [view, rows, ways, isRelaid, turnDeg, plotLabel]);
  return useMemo(() => ({ rows, layers }), [rows, layers]);
}
