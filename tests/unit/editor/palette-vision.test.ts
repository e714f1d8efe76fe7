import { describe, expect, it } from "vitest";
import { DEFAULT_NOTATION, type MarkStyleName } from "@/lib/plot/notation";

/**
 * Colour-vision deficiency at full severity, on linear RGB: Machado, Oliveira and Fernandes 2009, as the public
 * copies of their tables agree on it. Distance: CIE 1976 colour difference in CIELAB, white point D65.
 */
const VISIONS: Readonly<Record<string, readonly (readonly number[])[]>> = {
  usual: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};
/** Well above what is just noticed (about 2.3): two thin lines apart at a glance. Our own bar. */
const APART = 20;

const toLinear = (channel: number) => {
  const share = channel / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
};
const multiply = (matrix: readonly (readonly number[])[], vector: readonly number[]) =>
  matrix.map((row) => row.reduce((sum, value, i) => sum + value * (vector[i] ?? 0), 0));

function toLab(hex: string, vision: string): number[] {
  const linear = [1, 3, 5].map((at) => toLinear(Number.parseInt(hex.slice(at, at + 2), 16)));
  const seen = multiply(VISIONS[vision] ?? [], linear).map((value) => Math.min(1, Math.max(0, value)));
  const xyz = multiply(
    [
      [0.4124, 0.3576, 0.1805],
      [0.2126, 0.7152, 0.0722],
      [0.0193, 0.1192, 0.9505],
    ],
    seen,
  );
  const bend = (t: number) => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
  const [x = 0, y = 0, z = 0] = xyz.map((value, i) => bend(value / ([0.95047, 1, 1.08883][i] ?? 1)));
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const getDifference = (a: string, b: string, vision: string) =>
  Math.hypot(...toLab(a, vision).map((value, i) => value - (toLab(b, vision)[i] ?? 0)));

describe("the palette for every kind of colour vision", () => {
  it("is measured with a rule that tells good from bad", () => {
    // White is L* 100 and grey stays grey in every vision; Okabe and Ito's blue and orange part in all of them.
    expect(toLab("#ffffff", "usual")[0]).toBeCloseTo(100, 2);
    for (const vision of Object.keys(VISIONS)) {
      expect(getDifference("#808080", "#808080", vision)).toBe(0);
      expect(Math.hypot(...toLab("#808080", vision).slice(1))).toBeLessThan(1);
      expect(getDifference("#0072b2", "#e69f00", vision)).toBeGreaterThan(APART);
    }
    // A red and a green of about one lightness: apart to most, one colour to a deutan eye.
    expect(getDifference("#c8553d", "#7a8b3c", "usual")).toBeGreaterThan(50);
    expect(getDifference("#c8553d", "#7a8b3c", "deutan")).toBeLessThan(APART);
  });

  const pairs: readonly (readonly [MarkStyleName, MarkStyleName])[] = [
    ["inside", "surface"],
    ["inside", "decoy"],
    ["surface", "decoy"],
    ["found", "overlooked"],
    ["found", "stray"],
    ["overlooked", "stray"],
  ];
  it.each(pairs)("keeps %s and %s apart in both themes", (a, b) => {
    for (const scheme of ["light", "dark"] as const) {
      for (const vision of Object.keys(VISIONS)) {
        const difference = getDifference(
          DEFAULT_NOTATION[a].inks[scheme],
          DEFAULT_NOTATION[b].inks[scheme],
          vision,
        );
        expect(difference, `${scheme}, ${vision}`).toBeGreaterThan(APART);
      }
    }
  });
});
