import { describe, expect, it } from "vitest";
import { DEFAULT_NOTATION, DIAGRAM_INKS, MARK_STYLES, NotationSchema } from "@/lib/plot/notation";
import { getContrast } from "@/tests/support/contrast";

const SCHEMES = ["light", "dark"] as const;

describe("the contrast calculator itself", () => {
  // WCAG 2.2 formula; values recomputed outside (check values, section 8), on white.
  it.each([
    ["#767676", 4.5422],
    ["#777777", 4.4781],
    ["#949494", 3.0335],
    ["#959595", 2.9953],
    ["#ff0000", 3.9985],
    ["#008000", 5.1374],
    ["#0000ff", 8.5925],
    ["#0072b2", 5.1854],
    ["#d55e00", 3.8672],
  ])("gives %s on white %d", (hex, ratio) => {
    expect(getContrast(hex, "#ffffff")).toBeCloseTo(ratio, 3);
  });
});

describe("the default notation", () => {
  it("fits its schema", () => {
    expect(NotationSchema.parse(DEFAULT_NOTATION)).toEqual(DEFAULT_NOTATION);
  });

  it.each(MARK_STYLES)(
    "draws %s with 3:1 or more on paper and stone in both themes (WCAG 2.2, 1.4.11)",
    (name) => {
      for (const scheme of SCHEMES) {
        const ink = DEFAULT_NOTATION[name].inks[scheme];
        expect(getContrast(ink, DIAGRAM_INKS.paper[scheme])).toBeGreaterThanOrEqual(3);
        expect(getContrast(ink, DIAGRAM_INKS.stone[scheme])).toBeGreaterThanOrEqual(3);
      }
    },
  );

  it("reads text and girdle: 4.5:1 for ink, 3:1 for the girdle and the clock", () => {
    for (const scheme of SCHEMES) {
      const paper = DIAGRAM_INKS.paper[scheme];
      expect(getContrast(DIAGRAM_INKS.ink[scheme], paper)).toBeGreaterThanOrEqual(4.5);
      expect(getContrast(DIAGRAM_INKS.clock[scheme], paper)).toBeGreaterThanOrEqual(4.5);
      expect(getContrast(DIAGRAM_INKS.girdle[scheme], paper)).toBeGreaterThanOrEqual(3);
    }
  });

  it.each([
    ["inside", "surface"],
    ["inside", "decoy"],
    ["found", "overlooked"],
    ["found", "stray"],
    ["overlooked", "stray"],
  ] as const)("tells %s from %s by colour, by line, by dot and by callout (WCAG 2.2, 1.4.1)", (a, b) => {
    const one = DEFAULT_NOTATION[a];
    const other = DEFAULT_NOTATION[b];
    expect(one.inks).not.toEqual(other.inks);
    expect(one.dashPx).not.toEqual(other.dashPx);
    expect(one.dot).not.toBe(other.dot);
    expect(one.callout).not.toBe(other.callout);
  });
});
