"use client";

import { Button, NativeSelect, TextInput } from "@mantine/core";
import { ChevronRight } from "lucide-react";
import { type FormEvent, memo, useState } from "react";
import classes from "@/components/plot-editor/add-mark-form.module.css";
import type { Editor } from "@/components/plot-editor/use-editor";
import { findClockDeg, toPoint } from "@/lib/editor/clock-place";
import { toShape } from "@/lib/editor/drawn-mark";
import { clampInside } from "@/lib/editor/keep-inside";
import { type Point, VIEWS, type View } from "@/lib/gem/point";
import type { Shape } from "@/lib/plot/shape";

interface AddMarkFormProps {
  readonly editor: Editor;
  /** Asks for a characteristic when none is chosen yet. */
  readonly onNeedsSubject: () => void;
}

interface Fields {
  view: View;
  kind: Shape["kind"];
  clock: string;
  percent: string;
  toClock: string;
  toPercent: string;
  width: string;
}

const EMPTY: Fields = {
  view: "crown",
  kind: "dot",
  clock: "12",
  percent: "50",
  toClock: "1",
  toPercent: "50",
  width: "8",
};
const RING_POINTS = 10;

/** A round outline about a point, its width in percent of the girdle's. */
function drawRing([x, y]: Point, widthPct: number): Point[] {
  return Array.from({ length: RING_POINTS }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / RING_POINTS;
    const radius = widthPct / 200;
    return [x + radius * Math.sin(angle), y + radius * Math.cos(angle)];
  });
}

/** Puts a mark by saying where it is: for the keyboard, and for who does not see the diagram. */
export const AddMarkForm = memo(function AddMarkForm({ editor, onNeedsSubject }: AddMarkFormProps) {
  const [fields, setFields] = useState(EMPTY);
  const [fault, setFault] = useState<string | null>(null);
  const set = (change: Partial<Fields>) => setFields((before) => ({ ...before, ...change }));

  const readPoint = (clock: string, percent: string): Point | null => {
    const { frame } = editor.getEnvironment();
    const clockDeg = findClockDeg(clock);
    const share = Number(percent) / 100;
    if (clockDeg === null || percent.trim() === "" || !(share >= 0 && share <= 1)) return null;
    return clampInside(frame, fields.view, toPoint(frame, fields.view, { clockDeg, rimShare: share }));
  };
  const readPoints = (): readonly Point[] | string => {
    const from = readPoint(fields.clock, fields.percent);
    if (from === null) return "Give the clock such as 2:30, and the distance from 0 to 100.";
    if (fields.kind === "dot") return [from];
    if (fields.kind === "stroke") {
      const to = readPoint(fields.toClock, fields.toPercent);
      return to === null ? "Give where the stroke ends, such as 3:00 and 60." : [from, to];
    }
    const width = Number(fields.width);
    if (!(width >= 1 && width <= 90)) return "Give the width from 1 to 90.";
    const { frame } = editor.getEnvironment();
    return drawRing(from, width).map((point) => clampInside(frame, fields.view, point));
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (editor.getState().subject === null) return onNeedsSubject();
    const points = readPoints();
    if (typeof points === "string") return setFault(points);
    setFault(null);
    editor.dispatch({ kind: "place", view: fields.view, shape: toShape(fields.kind, points) });
  };
  const field = (name: keyof Fields, label: string) => (
    <TextInput
      label={label}
      size="sm"
      value={fields[name]}
      onChange={(event) => set({ [name]: event.currentTarget.value })}
    />
  );
  return (
    <details className={classes.details}>
      <summary className={classes.summary}>
        <ChevronRight size={16} aria-hidden="true" />
        Add a mark by clock position
      </summary>
      <form className={classes.form} onSubmit={submit} noValidate>
        <NativeSelect
          label="View"
          size="sm"
          value={fields.view}
          data={VIEWS.map((view) => ({ value: view, label: view === "crown" ? "Crown" : "Pavilion" }))}
          onChange={(event) => set({ view: event.currentTarget.value === "pavilion" ? "pavilion" : "crown" })}
        />
        <NativeSelect
          label="Drawn as"
          size="sm"
          value={fields.kind}
          data={[
            { value: "dot", label: "Dot" },
            { value: "stroke", label: "Stroke" },
            { value: "outline", label: "Outline" },
          ]}
          onChange={(event) => set({ kind: event.currentTarget.value as Shape["kind"] })}
        />
        {field("clock", fields.kind === "stroke" ? "From clock" : "Clock")}
        {field("percent", "From centre, %")}
        {fields.kind === "stroke" && field("toClock", "To clock")}
        {fields.kind === "stroke" && field("toPercent", "From centre, % (end)")}
        {fields.kind === "outline" && field("width", "Width, % of girdle")}
        <div className={classes.end}>
          <p role="alert">{fault}</p>
          <Button type="submit" size="sm">
            Add mark
          </Button>
        </div>
      </form>
    </details>
  );
});
