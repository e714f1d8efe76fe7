"use client";

import { Button } from "@mantine/core";
import { ChevronLeft, ChevronRight } from "lucide-react";
import { CommittedInput } from "@/components/plot-editor/committed-input";
import classes from "@/components/plot-editor/marks-table.module.css";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import { findClockDeg, toClockPlace, toClockText, toPoint } from "@/lib/editor/clock-place";
import type { EditorMark } from "@/lib/editor/drawn-mark";
import { moveVertex } from "@/lib/editor/edit-vertices";
import { clampInside, moveShapeInside } from "@/lib/editor/keep-inside";
import { getMiddle } from "@/lib/editor/measure-shape";
import type { Point } from "@/lib/gem/point";
import { listVertices } from "@/lib/plot/shape";

interface MarkPlaceFieldsProps {
  readonly editor: Editor;
  readonly mark: EditorMark;
}

/** Where a mark, or its selected point, lies: typed by clock and distance, or pointed at, without any dragging. */
export function MarkPlaceFields({ editor, mark }: MarkPlaceFieldsProps) {
  const vertex = useEditorState(editor, (state) => state.selectedVertex);
  const { frame } = editor.getEnvironment();
  const vertices: readonly Point[] = listVertices(mark.shape);
  const at = (vertex === null ? undefined : vertices[vertex]) ?? getMiddle(mark.shape);
  const place = toClockPlace(frame, mark.view, at);
  const moveTo = (clockDeg: number, rimShare: number) => {
    const to = clampInside(frame, mark.view, toPoint(frame, mark.view, { clockDeg, rimShare }));
    const shape =
      vertex === null
        ? moveShapeInside(frame, mark.view, mark.shape, to[0] - at[0], to[1] - at[1])
        : moveVertex(mark.shape, vertex, to);
    if (shape === null) return "The outline would cross itself";
    editor.dispatch({ kind: "reshape", id: mark.id, shape });
    return null;
  };
  const select = (next: number | null) => editor.dispatch({ kind: "select-vertex", vertex: next });
  const step = (way: 1 | -1) =>
    select(
      vertex === null
        ? way === 1
          ? 0
          : vertices.length - 1
        : (vertex + way + vertices.length) % vertices.length,
    );
  return (
    <>
      <div className={classes.fields}>
        <CommittedInput
          label="Clock"
          inputMode="text"
          value={toClockText(place.clockDeg)}
          onCommit={(text) => {
            const clockDeg = findClockDeg(text);
            return clockDeg === null ? "Such as 2:30" : moveTo(clockDeg, place.rimShare);
          }}
        />
        <CommittedInput
          label="From centre"
          unit="%"
          value={String(Math.round(place.rimShare * 100))}
          onCommit={(text) => {
            const percent = Number(text);
            return text === "" || !(percent >= 0 && percent <= 100)
              ? "0 to 100"
              : moveTo(place.clockDeg, percent / 100);
          }}
        />
        <Button
          variant="outline"
          size="sm"
          onClick={() => editor.dispatch({ kind: "aim", id: mark.id, vertex })}
        >
          {vertex === null ? "Move by pointing" : "Move point"}
        </Button>
      </div>
      {mark.shape.kind !== "dot" && (
        // biome-ignore lint/a11y/useSemanticElements: a row of buttons, not a set of form fields.
        <div className={classes.points} role="group" aria-label="Points of this mark">
          <Button variant="subtle" size="compact-sm" aria-label="Previous point" onClick={() => step(-1)}>
            <ChevronLeft size={16} />
          </Button>
          <span className={classes.pointCount}>
            {vertex === null ? `${vertices.length} points` : `Point ${vertex + 1} of ${vertices.length}`}
          </span>
          <Button variant="subtle" size="compact-sm" aria-label="Next point" onClick={() => step(1)}>
            <ChevronRight size={16} />
          </Button>
          {vertex !== null && (
            <>
              <Button
                variant="subtle"
                size="compact-sm"
                onClick={() => editor.dispatch({ kind: "insert-vertex", id: mark.id, edge: vertex })}
              >
                Insert after
              </Button>
              <Button
                variant="subtle"
                size="compact-sm"
                onClick={() => editor.dispatch({ kind: "delete-vertex", id: mark.id, vertex })}
              >
                Delete point
              </Button>
              <Button variant="subtle" size="compact-sm" onClick={() => select(null)}>
                Whole mark
              </Button>
            </>
          )}
        </div>
      )}
    </>
  );
}
