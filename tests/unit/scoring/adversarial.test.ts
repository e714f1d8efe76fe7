/** Plots that nobody draws: the engine answers all the same. That it answers in time is measured in tests/bench. */
import { describe, expect, it, vi } from "vitest";
import { createSeededRandom } from "@/lib/base/seeded-random";
import type { PlottedMark } from "@/lib/plot/mark";
import { PlotSchema } from "@/lib/plot/plots-file";
import { ScoredPlotSchema } from "@/lib/plot/score-result";
import type { Shape } from "@/lib/plot/shape";
import { scorePlot } from "@/lib/scoring/score-plot";
import { makeInput, makePlot, makeReference } from "@/tests/support/scoring/make-case";

vi.setConfig({ testTimeout: 180_000 });

const reference = makeReference("adversarial", 30);
const mark = (id: number, shape: Shape, more: Partial<PlottedMark> = {}): PlottedMark => ({
  id: `m${id}`,
  view: "crown",
  characteristic: "pinpoint",
  shape,
  ...more,
});

function expectSound(marks: PlottedMark[], against = reference) {
  const plot = { grades: {}, marks };
  expect(PlotSchema.safeParse(plot).success).toBe(true);
  const scored = scorePlot(makeInput(against, plot));
  expect(ScoredPlotSchema.safeParse(scored).error?.issues ?? []).toEqual([]);
  expect(JSON.stringify(scored)).not.toMatch(/NaN|null,null|Infinity/);
  return scored;
}

const rim = (angle: number): [number, number] => [0.5 * Math.sin(angle), 0.5 * Math.cos(angle)];

describe("plots that nobody draws", () => {
  it("takes 2,000 dots", () => {
    const random = createSeededRandom("2000 dots");
    const dots = Array.from({ length: 2000 }, (_, i) => {
      const [r, angle] = [0.49 * Math.sqrt(random.next()), 7 * random.next()];
      return mark(i, { kind: "dot", at: [r * Math.cos(angle), r * Math.sin(angle)] }, { atMs: i * 40 });
    });
    expect(expectSound(dots).detail.deduction).toBe(0.4);
  });

  it("takes 2,000 dots on the girdle, each opposite another", () => {
    const { result } = expectSound(
      Array.from({ length: 2000 }, (_, i) => mark(i, { kind: "dot", at: rim((Math.PI * i) / 1000) })),
    );
    expect(result.strays.filter(({ cause }) => cause === "glint").length).toBeGreaterThan(1500);
  });

  it("takes 2,000 marks in one place, and matches one of them", () => {
    const here: Shape = { kind: "dot", at: [0.2, 0.2] };
    const alone = {
      grades: { clarity: "SI1" },
      marks: [{ id: "a", view: "crown" as const, characteristic: "pinpoint", shape: here }],
      decoys: [],
    };
    const { result } = expectSound(
      Array.from({ length: 2000 }, (_, i) => mark(i, here)),
      alone,
    );
    expect(result.found).toMatchObject([{ reference: "a", mark: "m0", value: 1 }]);
  });

  it("takes strokes and outlines of no length, flat outlines and marks in the very centre", () => {
    const at: [number, number] = [0.1, -0.1];
    const shapes: Shape[] = [
      { kind: "stroke", points: [at, at] },
      { kind: "outline", points: [at, at, at] },
      { kind: "outline", points: [at, [0.2, -0.1], [0.3, -0.1]] },
      { kind: "dot", at: [0, 0] },
      {
        kind: "stroke",
        points: [
          [0, 0],
          [0, 0],
          [0, 0],
        ],
      },
      {
        kind: "outline",
        points: [
          [-0.1, 0],
          [0, 0.1],
          [0.1, 0],
          [0, -0.1],
        ],
      },
    ];
    expectSound(
      shapes.flatMap((shape, i) => [
        mark(2 * i, shape),
        mark(2 * i + 1, shape, { view: "pavilion", characteristic: "crystal" }),
      ]),
    );
    const marks = shapes.map((shape, i) => ({
      id: `r${i}`,
      view: "crown" as const,
      characteristic: "crystal",
      shape,
      depth: 0.5,
    }));
    expectSound(
      shapes.map((shape, i) => mark(i, shape)),
      { ...reference, marks },
    );
  });

  it("takes outlines that almost cross themselves, with as many points as there may be", () => {
    const zigzag = Array.from({ length: 400 }, (_, i): [number, number] => {
      const k = i < 200 ? i : 399 - i;
      return [-0.3 + 0.003 * k, (k % 2) * 0.2 + (i < 200 ? 0 : 1e-9)];
    });
    expectSound(
      Array.from({ length: 40 }, (_, i) =>
        mark(i, { kind: "outline", points: zigzag }, { characteristic: "cloud" }),
      ),
    );
  });

  it("takes outlines by the hundred, each round every mark of the stone", () => {
    const ring = (r: number): Shape => ({
      kind: "outline",
      points: Array.from({ length: 40 }, (_, i): [number, number] => [
        r * Math.cos(i / 6.4),
        r * Math.sin(i / 6.4),
      ]),
    });
    expectSound(
      Array.from({ length: 300 }, (_, i) => mark(i, ring(0.4 + i / 4000), { characteristic: "cloud" })),
    );
  });

  it("takes a crowded stone: 100 marks in a tenth of the area", () => {
    const crowded = makeReference("crowded", 100, { radius: 0.158 });
    const { result } = expectSound(
      makePlot("crowded", crowded, { scatter: 0.004, overlooked: 0, confused: 0, behind: 0 }).marks,
      crowded,
    );
    expect(result.found.length).toBe(100);
  });
});
