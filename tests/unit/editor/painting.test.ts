import { describe, expect, it } from "vitest";
import { buildPalette } from "@/components/plot-canvas/build-palette";
import type { DrawnItem } from "@/components/plot-canvas/drawn-item";
import { CALLOUT_RADIUS_PX, layoutCallouts } from "@/components/plot-canvas/layout-callouts";
import { paintCallouts } from "@/components/plot-canvas/paint-callouts";
import { paintMark } from "@/components/plot-canvas/paint-mark";
import { paintOverview } from "@/components/plot-canvas/paint-overview";
import { type PaintContext, paintStone, type ToPx } from "@/components/plot-canvas/paint-stone";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { toScreenPx, WHOLE_VIEW } from "@/lib/editor/camera";
import { getSolid } from "@/lib/gem/build-solid";
import { drawView } from "@/lib/gem/draw-view";
import { DEFAULT_NOTATION, DIAGRAM_INKS } from "@/lib/plot/notation";

const SIZE_PX = 500;
const toPx: ToPx = (point) => toScreenPx(WHOLE_VIEW, { sizePx: SIZE_PX, halfWidth: 0.6 }, point);
const PALETTE = buildPalette(DEFAULT_NOTATION, "light");

interface Call {
  readonly name: string;
  readonly args: readonly unknown[];
}

/** A canvas that draws nothing and remembers everything: calls, and what was set. */
function createRecorder(): { context: PaintContext; calls: Call[] } {
  const calls: Call[] = [];
  const context = new Proxy(
    {},
    {
      get:
        (_target, name) =>
        (...args: unknown[]) => {
          calls.push({ name: String(name), args });
        },
      set: (_target, name, value) => {
        calls.push({ name: `set ${String(name)}`, args: [value] });
        return true;
      },
    },
  ) as PaintContext;
  return { context, calls };
}
const listCalls = (calls: readonly Call[], name: string) => calls.filter((call) => call.name === name);

const dot = (key: string, at: [number, number], style: DrawnItem["style"] = "inside"): DrawnItem => ({
  key,
  shape: { kind: "dot", at },
  style,
  callout: key,
});

describe("the stone", () => {
  it("is painted edge by edge, with a clock that runs the other way round on the pavilion", () => {
    const solid = getSolid("round-brilliant", {});
    const hourAt = (view: "crown" | "pavilion") => {
      const { context, calls } = createRecorder();
      const drawing = drawView(solid, view);
      paintStone(context, drawing, toPx, PALETTE);
      const numerals = listCalls(calls, "fillText");
      expect(numerals.map(({ args }) => args[0])).toEqual([
        "12",
        "1",
        "2",
        "3",
        "4",
        "5",
        "6",
        "7",
        "8",
        "9",
        "10",
        "11",
      ]);
      expect(listCalls(calls, "save")).toHaveLength(listCalls(calls, "restore").length);
      // One line for each edge and each of the 60 ticks, and the outline's own (painted twice).
      expect(listCalls(calls, "lineTo")).toHaveLength(
        drawing.edges.length + 60 + 2 * (drawing.outline.length - 1),
      );
      return numerals.find(({ args }) => args[0] === "3")?.args[1] as number;
    };
    expect(hourAt("crown")).toBeGreaterThan(SIZE_PX / 2);
    expect(hourAt("pavilion")).toBeLessThan(SIZE_PX / 2);
  });
});

describe("the overview", () => {
  it("shows the window that is seen, and nothing at zoom 1", () => {
    const drawing = drawView(getSolid("round-brilliant", {}), "crown");
    const viewport = { sizePx: SIZE_PX, halfWidth: 0.6 };
    const listRects = (zoom: number) => {
      const { context, calls } = createRecorder();
      paintOverview(context, drawing, { zoom, centre: [0, 0] }, viewport, PALETTE);
      return listCalls(calls, "rect").map(({ args }) => args as number[]);
    };
    expect(listRects(1)).toEqual([]);
    const [ground, window] = listRects(4);
    expect((window?.[2] ?? 0) / (ground?.[2] ?? 1)).toBeCloseTo(1 / 4, 6);
  });
});

describe("marks", () => {
  it("on the surface are dashed and hollow, inside unbroken and filled (WCAG 2.2, 1.4.1)", () => {
    const paint = (item: DrawnItem) => {
      const { context, calls } = createRecorder();
      paintMark(context, item, toPx, PALETTE);
      return calls;
    };
    const stroke = {
      kind: "stroke" as const,
      points: [
        [0, 0],
        [0.1, 0],
      ] as [number, number][],
    };
    const dashes = (style: DrawnItem["style"]) =>
      listCalls(paint({ key: "a", shape: stroke, style, callout: null }), "setLineDash").at(-1)?.args[0];
    expect(dashes("inside")).toEqual([]);
    expect(dashes("surface")).toEqual([5, 3]);
    const fill = (style: DrawnItem["style"]) =>
      listCalls(paint(dot("a", [0, 0], style)), "set fillStyle").at(-1)?.args[0];
    expect(fill("inside")).toBe(DEFAULT_NOTATION.inside.inks.light);
    expect(fill("surface")).toBe(DIAGRAM_INKS.paper.light);
  });

  it("are painted where they are", () => {
    const { context, calls } = createRecorder();
    paintMark(context, dot("a", [0.1, 0.2]), toPx, PALETTE);
    expect(listCalls(calls, "arc")[0]?.args.slice(0, 2)).toEqual([...toPx([0.1, 0.2])]);
  });
});

describe("callouts", () => {
  const random = createSeededRandom("callouts");
  const scatter = (count: number) =>
    Array.from({ length: count }, (_, i) => {
      const angle = random.next() * 2 * Math.PI;
      const radius = 0.48 * Math.sqrt(random.next());
      return dot(String(i + 1), [radius * Math.cos(angle), radius * Math.sin(angle)]);
    });

  it("never lie over one another, over a dot, or off the screen", () => {
    for (const count of [0, 1, 12, 60, 500]) {
      const items = scatter(count);
      const placed = layoutCallouts(items, toPx, [250, 250], SIZE_PX);
      const dots = items.flatMap(({ shape }) => (shape.kind === "dot" ? [toPx(shape.at)] : []));
      for (const [i, { at }] of placed.entries()) {
        const [x, y] = at;
        const others = placed.slice(i + 1).map((other) => Math.hypot(other.at[0] - x, other.at[1] - y));
        const marks = dots.map((dotPx) => Math.hypot(dotPx[0] - x, dotPx[1] - y));
        expect(Math.min(x, y, SIZE_PX - x, SIZE_PX - y)).toBeGreaterThanOrEqual(CALLOUT_RADIUS_PX);
        expect(Math.min(...others, 1e9)).toBeGreaterThanOrEqual(2 * CALLOUT_RADIUS_PX);
        expect(Math.min(...marks)).toBeGreaterThan(CALLOUT_RADIUS_PX);
      }
    }
  });

  it("have room for every mark of a full plot", () => {
    expect(layoutCallouts(scatter(30), toPx, [250, 250], SIZE_PX)).toHaveLength(30);
  });

  it("leave out what is off the screen and what has no number", () => {
    const items = [dot("1", [0, 0]), dot("2", [2, 2]), { ...dot("3", [0.2, 0]), callout: null }];
    expect(layoutCallouts(items, toPx, [250, 250], SIZE_PX).map(({ text }) => text)).toEqual(["1"]);
  });

  it("bear the number", () => {
    const { context, calls } = createRecorder();
    paintCallouts(context, layoutCallouts([dot("17", [0, 0])], toPx, [250, 250], SIZE_PX), PALETTE);
    expect(listCalls(calls, "fillText").map(({ args }) => args[0])).toEqual(["17"]);
  });
});
