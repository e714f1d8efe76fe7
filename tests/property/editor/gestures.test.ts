import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  clampCamera,
  panCamera,
  toScreenPx,
  type Viewport,
  WHOLE_VIEW,
  zoomCamera,
} from "@/lib/editor/camera";
import { closeOutline, isSelfCrossing } from "@/lib/editor/close-outline";
import type { EditorAction } from "@/lib/editor/editor-action";
import { TOOLS } from "@/lib/editor/editor-state";
import { getDistanceToLine } from "@/lib/editor/measure-shape";
import { createDocument, listMarks } from "@/lib/editor/plot-document";
import { thinLine } from "@/lib/editor/thin-line";
import type { Point } from "@/lib/gem/point";
import { type PlottedMark, PlottedMarkSchema } from "@/lib/plot/mark";
import { listVertices, MAX_SHAPE_POINTS } from "@/lib/plot/shape";
import { rebuildSitting, type SittingEvent } from "@/lib/plot/sitting-event";
import { openEditor, REACH, ROUND_FRAME } from "@/tests/support/editor-harness";

const coordinate = fc.integer({ min: -600, max: 600 }).map((x) => x / 1000);
const pointArbitrary: fc.Arbitrary<Point> = fc.tuple(coordinate, coordinate);
const viewArbitrary = fc.constantFrom("crown" as const, "pavilion" as const);
const idArbitrary = fc.nat(5).map((n) => `m${n + 1}`);

/** Anything that may be asked of an editor, in any order, sense or none. */
const actionArbitrary: fc.Arbitrary<EditorAction<PlottedMark>> = fc.oneof(
  fc.record({
    kind: fc.constant("press" as const),
    place: fc.record({ view: viewArbitrary, at: pointArbitrary }),
    reach: fc.constant(REACH),
  }),
  fc.record({
    kind: fc.constant("drag" as const),
    points: fc.array(pointArbitrary, { minLength: 1, maxLength: 12 }),
    reach: fc.constant(REACH),
  }),
  fc.record({ kind: fc.constant("release" as const), reach: fc.constant(REACH) }),
  fc.record({ kind: fc.constant("choose-tool" as const), tool: fc.constantFrom(...TOOLS) }),
  fc.record({ kind: fc.constant("select" as const), id: idArbitrary }),
  fc.record({ kind: fc.constant("remove" as const), id: idArbitrary }),
  fc.record({ kind: fc.constant("aim" as const), id: idArbitrary, vertex: fc.constant(null) }),
  fc.record({ kind: fc.constant("insert-vertex" as const), id: idArbitrary, edge: fc.nat(5) }),
  fc.record({ kind: fc.constant("delete-vertex" as const), id: idArbitrary, vertex: fc.nat(5) }),
  fc.record({ kind: fc.constant("nudge" as const), dx: coordinate, dy: coordinate }),
  fc.record({ kind: fc.constant("select-vertex" as const), vertex: fc.nat(5) }),
  fc.record({
    kind: fc.constant("move-crosshair" as const),
    view: viewArbitrary,
    dx: coordinate,
    dy: coordinate,
  }),
  fc.record({
    kind: fc.constant("press-crosshair" as const),
    view: viewArbitrary,
    reach: fc.constant(REACH),
  }),
  fc.constantFrom(
    { kind: "undo" as const },
    { kind: "redo" as const },
    { kind: "finish" as const },
    { kind: "take-back-point" as const },
    { kind: "cancel" as const },
    { kind: "interrupt" as const },
    { kind: "settle" as const },
  ),
);
const sessionArbitrary = fc.array(actionArbitrary, { maxLength: 60 });

describe("whatever is done to an editor", () => {
  it("its marks are fit to be kept: valid, and inside the girdle (SPEC 4.3, 4.5, 5.1)", () => {
    fc.assert(
      fc.property(sessionArbitrary, (actions) => {
        const editor = openEditor([], { tool: "outline" });
        for (const action of actions) editor.dispatch(action);
        for (const mark of editor.marks()) {
          expect(PlottedMarkSchema.safeParse(mark).success).toBe(true);
          for (const point of listVertices(mark.shape)) {
            expect(ROUND_FRAME.isInside(mark.view, point)).toBe(true);
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  it("what it tells, replayed as a log, is what it shows (SPEC 2.6, 3.10)", () => {
    fc.assert(
      fc.property(sessionArbitrary, (actions) => {
        const editor = openEditor([], { tool: "stroke" });
        for (const action of actions) editor.dispatch(action);
        const events = editor.told.map(
          ({ put, removed }, i): SittingEvent => ({
            kind: "marks",
            seq: i + 1,
            atMs: i,
            put: [...put],
            removed: [...removed],
          }),
        );
        expect(listMarks(createDocument(rebuildSitting(events).plot.marks))).toEqual(editor.marks());
      }),
      { numRuns: 300 },
    );
  });

  it("undoing everything leads to the beginning and redoing everything back (SPEC 3.10)", () => {
    fc.assert(
      fc.property(sessionArbitrary, (actions) => {
        const editor = openEditor([], { tool: "dot" });
        for (const action of actions) editor.dispatch(action);
        editor.dispatch({ kind: "settle" });
        const { undone } = editor.state().history;
        for (let i = 0; i < undone.length; i += 1) editor.dispatch({ kind: "redo" });
        const end = editor.marks();
        const entries = editor.state().history.done.length;
        for (let i = 0; i < entries; i += 1) editor.dispatch({ kind: "undo" });
        expect(editor.marks()).toEqual([]);
        for (let i = 0; i < entries; i += 1) editor.dispatch({ kind: "redo" });
        expect(editor.marks()).toEqual(end);
      }),
      { numRuns: 200 },
    );
  });

  it("no more than one change is told of one action, save one that ends a run of arrow keys (SPEC 3.1, 3.11)", () => {
    fc.assert(
      fc.property(sessionArbitrary, (actions) => {
        const editor = openEditor([], { tool: "dot" });
        for (const action of actions) {
          const before = editor.told.length;
          const isRunning = editor.state().gesture?.kind === "nudging";
          editor.dispatch(action);
          expect(editor.told.length - before).toBeLessThanOrEqual(isRunning ? 2 : 1);
        }
      }),
    );
  });
});

describe("thinning (SPEC 4.1)", () => {
  it("keeps ends and order, and every point within the tolerance of the result", () => {
    fc.assert(
      fc.property(
        fc.array(pointArbitrary, { minLength: 3, maxLength: 80 }),
        fc.double({ min: 0.001, max: 0.2, noNaN: true }),
        (line, tolerance) => {
          const thinned = thinLine(line, tolerance);
          expect(thinned[0]).toBe(line[0]);
          expect(thinned.at(-1)).toBe(line.at(-1));
          expect(thinned.length).toBeLessThanOrEqual(Math.min(line.length, MAX_SHAPE_POINTS));
          let from = 0;
          for (const point of thinned) {
            from = line.indexOf(point, from);
            expect(from).toBeGreaterThanOrEqual(0);
          }
          const shape = {
            kind: "stroke" as const,
            points: thinned.map(([x, y]): [number, number] => [x, y]),
          };
          for (const point of line)
            expect(getDistanceToLine(shape, point)).toBeLessThanOrEqual(tolerance + 1e-12);
        },
      ),
    );
  });
});

describe("closing an outline (SPEC 4.2, 4.3)", () => {
  it("gives an outline that does not cross itself, or a reason", () => {
    fc.assert(
      fc.property(fc.array(pointArbitrary, { maxLength: 30 }), (line) => {
        const closed = closeOutline(line, 0.005);
        if (closed.ok) {
          expect(isSelfCrossing(closed.points)).toBe(false);
          expect(closed.points.length).toBeGreaterThanOrEqual(3);
        } else expect(["crosses", "flat"]).toContain(closed.why);
      }),
    );
  });
});

describe("the camera (SPEC 6.1, 6.2)", () => {
  const viewport: Viewport = { sizePx: 500, halfWidth: 0.6 };
  it("stays within the view, and keeps the anchor unless the view's edge forbids it", () => {
    const factorArbitrary = fc.double({ min: 0.2, max: 5, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(factorArbitrary, pointArbitrary), { maxLength: 12 }), (zooms) => {
        let camera = WHOLE_VIEW;
        for (const [factor, anchor] of zooms) {
          const next = zoomCamera(camera, factor, anchor, viewport.halfWidth);
          expect(clampCamera(next, viewport.halfWidth)).toEqual(next);
          const [before, after] = [camera, next].map((one) => toScreenPx(one, viewport, anchor));
          const limit = viewport.halfWidth * (1 - 1 / next.zoom);
          const isFree = next.centre.every((value) => Math.abs(value) < limit - 1e-9);
          if (isFree && before !== undefined && after !== undefined) {
            expect(after[0]).toBeCloseTo(before[0], 6);
            expect(after[1]).toBeCloseTo(before[1], 6);
          }
          camera = panCamera(next, anchor[0], anchor[1], viewport.halfWidth);
        }
      }),
    );
  });
});
