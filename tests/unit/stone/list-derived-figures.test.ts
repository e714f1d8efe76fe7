import { describe, expect, it } from "vitest";
import { countFacets, getMeasuredDepth, listDerivedFigures } from "@/components/stone/list-derived-figures";
import { getSolid } from "@/lib/gem/build-solid";

describe("listDerivedFigures", () => {
  it("counts the facets of a round brilliant as the trade does: 57 without a culet, 58 with one", () => {
    // Britannica: 58 = 33 + 25, the culet among them (check-values 2.2).
    expect(countFacets(getSolid("round-brilliant", { culetPct: 0 }))).toBe(57);
    expect(countFacets(getSolid("round-brilliant", { culetPct: 2 }))).toBe(58);
  });

  it("gives Tolkowsky's heights for his proportions", () => {
    // Tolkowsky 1919: table 53, crown 34.5, pavilion 40.75; crown 16.15, pavilion 43.08, total 59.23 (check-values 2.1).
    const solid = getSolid("round-brilliant", {
      tablePct: 53,
      crownAngleDeg: 34.5,
      pavilionAngleDeg: 40.75,
      girdlePct: 0,
    });
    const values = Object.fromEntries(listDerivedFigures(solid).map(({ what, value }) => [what, value]));
    expect(values["Crown height"]).toBe("16.2 %");
    expect(values["Pavilion depth"]).toBe("43.1 %");
    expect(values["Total depth"]).toBe("59.2 %");
  });

  it("measures a round's depth by its mean diameter, any other cut's by its width", () => {
    expect(getMeasuredDepth("round-brilliant", [5.3, 5.1, 3.12])).toBeCloseTo(0.6, 10);
    expect(getMeasuredDepth("oval", [7, 5, 3])).toBeCloseTo(0.6, 10);
  });

  it("remarks on a measured depth only where it is off by more than one and a half per cent", () => {
    const solid = getSolid("round-brilliant");
    const depth = solid.crownHeight + solid.girdleThickness + solid.pavilionDepth;
    const remarkAt = (measured: number) =>
      listDerivedFigures(solid, [5, 5, measured * 5]).find(({ what }) => what === "Measured depth")?.remark;
    expect(remarkAt(depth + 0.014)).toBeUndefined();
    expect(remarkAt(depth + 0.02)).toContain("deeper");
    expect(remarkAt(depth - 0.02)).toContain("shallower");
  });
});
