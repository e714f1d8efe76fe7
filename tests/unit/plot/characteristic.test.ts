import { describe, expect, it } from "vitest";
import { DEFAULT_CHARACTERISTICS, LIKE_PAIRS } from "@/lib/plot/characteristic";

describe("the characteristics", () => {
  it("classes chip, etch channel, knot, twinning wisp and cavity as inside (GB/T 16554-2017, foreword, table A.1)", () => {
    for (const name of ["chip", "etch-channel", "knot", "twinning-wisp", "cavity"]) {
      expect(DEFAULT_CHARACTERISTICS.get(name)?.class).toBe("inside");
    }
  });

  it("classes burn mark and lizard skin as surface (GB/T 16554-2017, foreword, table A.2)", () => {
    for (const name of ["burn-mark", "lizard-skin"])
      expect(DEFAULT_CHARACTERISTICS.get(name)?.class).toBe("surface");
  });

  it("names only known characteristics in its likeness pairs, none twice, and is symmetric", () => {
    const keys = LIKE_PAIRS.map((pair) => [...pair].sort().join(" "));
    expect(new Set(keys).size).toBe(keys.length);
    for (const [a, b] of LIKE_PAIRS) {
      expect(DEFAULT_CHARACTERISTICS.get(a)?.like).toContain(b);
      expect(DEFAULT_CHARACTERISTICS.get(b)?.like).toContain(a);
    }
  });
});
