"use client";

import { type ReactNode, useCallback, useMemo, useRef, useState } from "react";
import {
  buildEchoLayer,
  type EchoRow,
  linkWay,
  listEchoRows,
  toEchoDecoy,
} from "@/components/echoes/build-echo-layer";
import { EchoList } from "@/components/echoes/echo-list";
import { useEchoes } from "@/components/echoes/use-echoes";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import type { ReferenceHandle } from "@/components/plot-editor/plot-editor-props";
import type { ReferenceDrawing } from "@/lib/editor/drawn-mark";
import { listEchoSources } from "@/lib/editor/list-echoes";
import { splitReferenceDrawings } from "@/lib/editor/reference-drawings";
import { getSolid } from "@/lib/gem/build-solid";
import type { StoneView } from "@/lib/plot/staff-view";

export interface ReferencePlotProps {
  stone: Pick<StoneView, "body" | "characteristics">;
  /** Read once. To open another drawing, give another React `key`. */
  initial: readonly ReferenceDrawing[];
  onChange: (drawings: readonly ReferenceDrawing[]) => void;
  toolBarEnd: ReactNode;
  /** Beneath the table of marks and the echoes. */
  aside: ReactNode;
}

/** The echoes of the drawing as it stands: of the selected mark if it has any to predict, else of all. */
function useEchoRows(
  stone: ReferencePlotProps["stone"],
  drawings: readonly ReferenceDrawing[],
  selectedId: string | null,
) {
  const { cut, proportions, refractiveIndex } = stone.body;
  const sources = useMemo(() => {
    const inside = new Set(
      stone.characteristics.filter((one) => one.class === "inside").map(({ name }) => name),
    );
    return listEchoSources(splitReferenceDrawings(drawings).marks, (name) => inside.has(name));
  }, [drawings, stone.characteristics]);
  const input = useMemo(
    () => ({ cut, proportions, refractiveIndex, sources }),
    [cut, proportions, refractiveIndex, sources],
  );
  const { echoes, state } = useEchoes(input);
  const ofId = sources.some(({ id }) => id === selectedId) ? selectedId : null;
  const rows = useMemo(
    () => listEchoRows(echoes, drawings, getSolid(cut, proportions), ofId),
    [echoes, drawings, cut, proportions, ofId],
  );
  const ofNumber = ofId === null ? null : drawings.findIndex(({ id }) => id === ofId) + 1;
  return { rows, state, ofNumber, hasSources: sources.length > 0 };
}

/** The reference in the plot editor, with the echoes that its inside marks are predicted to have. */
export function ReferencePlot({ stone, initial, onChange, toolBarEnd, aside }: ReferencePlotProps) {
  const [drawings, setDrawings] = useState(initial);
  const [selectedId, setSelectedId] = useState<string | null>(null);
  const [highlightKey, setHighlightKey] = useState<string | null>(null);
  const handle = useRef<ReferenceHandle>(null);
  const { rows, ...found } = useEchoRows(stone, drawings, selectedId);

  const layer = useMemo(() => buildEchoLayer(rows), [rows]);
  const highlighted = rows.find(({ echo }) => echo.key === highlightKey)?.echo;
  const layers = useMemo(
    () => [{ ...layer, links: highlighted === undefined ? [] : linkWay(highlighted) }],
    [layer, highlighted],
  );
  const toggle = useCallback(({ echo, decoy }: EchoRow) => {
    if (decoy === null) handle.current?.addDecoy(toEchoDecoy(echo));
    else handle.current?.remove(decoy.id);
  }, []);
  const latestRows = useRef(rows);
  latestRows.current = rows;
  const pick = useCallback(
    (key: string) => {
      const row = latestRows.current.find(({ echo }) => echo.key === key);
      if (row !== undefined) toggle(row);
    },
    [toggle],
  );

  return (
    <PlotEditor
      mode="reference"
      cut={stone.body.cut}
      proportions={stone.body.proportions}
      characteristics={stone.characteristics}
      initialMarks={initial}
      onChange={(_change, marks) => {
        setDrawings(marks);
        onChange(marks);
      }}
      handle={handle}
      layers={layers}
      highlightId={highlightKey}
      onHighlight={setHighlightKey}
      onLayerPick={pick}
      onSelect={setSelectedId}
      toolBarEnd={toolBarEnd}
      aside={
        <>
          <EchoList
            rows={rows}
            {...found}
            highlightKey={highlightKey}
            onHighlight={setHighlightKey}
            onToggle={toggle}
          />
          {aside}
        </>
      }
    />
  );
}
