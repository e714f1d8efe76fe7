import { describe, expect, it } from "vitest";
import { extendDotting, findDottingBursts, isDotting, NO_DOTS } from "@/lib/plot/find-dotting";
import type { PlottedMark } from "@/lib/plot/mark";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";

const rule = DEFAULT_RUBRIC.dust;
const dot = (id: string, atMs?: number): PlottedMark => ({
  id,
  view: "crown",
  characteristic: "pinpoint",
  shape: { kind: "dot", at: [0, 0] },
  ...(atMs === undefined ? {} : { atMs }),
});
const stroke = (id: string, atMs: number): PlottedMark => ({
  ...dot(id, atMs),
  shape: {
    kind: "stroke",
    points: [
      [0, 0],
      [0.1, 0],
    ],
  },
});
const row = (count: number, gapMs: number, from = 0) =>
  Array.from({ length: count }, (_, i) => dot(`m${i + 1}`, from + gapMs * i));

describe("a burst (rule 5.6)", () => {
  it("is six dots, none more than 1.5 s after the one before", () => {
    expect(findDottingBursts(row(5, 100), rule)).toEqual([]);
    expect(findDottingBursts(row(6, 1500), rule)).toEqual([
      { dots: ["m1", "m2", "m3", "m4", "m5", "m6"], fromMs: 0, toMs: 7500 },
    ]);
    expect(findDottingBursts(row(6, 1501), rule)).toEqual([]);
  });

  it("follows the times and not the order of the marks", () => {
    expect(findDottingBursts(row(7, 900).reverse(), rule)).toEqual(findDottingBursts(row(7, 900), rule));
  });

  it("is neither lengthened nor broken by strokes, nor by dots without a time", () => {
    const marks = [...row(6, 1000), stroke("s", 2500), dot("untimed")];
    expect(findDottingBursts(marks, rule)).toEqual(findDottingBursts(row(6, 1000), rule));
    expect(findDottingBursts([...row(5, 1000), stroke("s", 4500)], rule)).toEqual([]);
  });

  it("comes as often as there is a pause between", () => {
    expect(
      findDottingBursts([...row(6, 500), ...row(8, 500, 60_000)], rule).map(({ dots }) => dots.length),
    ).toEqual([6, 8]);
  });

  it("is found mark by mark as well, while it happens", () => {
    const seen = row(8, 700).map((_, i, all) =>
      isDotting(
        all.slice(0, i + 1).reduce((now, mark) => extendDotting(now, mark, rule), NO_DOTS),
        rule,
      ),
    );
    expect(seen).toEqual([false, false, false, false, false, true, true, true]);
    const broken = [...row(6, 700), dot("late", 20_000)].reduce(
      (now, mark) => extendDotting(now, mark, rule),
      NO_DOTS,
    );
    expect(broken).toEqual({ dots: ["late"], fromMs: 20_000, toMs: 20_000 });
  });
});
