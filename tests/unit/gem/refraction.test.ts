import { describe, expect, it } from "vitest";
import {
  DIAMOND_INDEX,
  getCriticalAngleDeg,
  getDiamondIndex,
  getReflectance,
  reflectDirection,
  reflectPoint,
  refractInward,
} from "@/lib/gem/refraction";
import { toUnitVec3, type Vec3 } from "@/lib/gem/vec3";

const DEG = Math.PI / 180;

describe("refraction", () => {
  // Peter 1923, Z. Phys. 15, 358-368; table of check-values.md 2.5.
  it.each([
    ["B", 0.6867, 2.40728],
    ["C", 0.65627, 2.40991],
    ["D", 0.58929, 2.41726],
    ["d", 0.58756, 2.41749],
    ["e", 0.54607, 2.42359],
    ["F", 0.48613, 2.43554],
    ["G", 0.4308, 2.45172],
  ])("has diamond's index at line %s", (_, wavelength, index) => {
    expect(getDiamondIndex(wavelength)).toBeCloseTo(index, 5);
  });

  // check-values.md 2.5: n(G) - n(B) = 0.04444, critical angle 24.4397, reflectance at right angles 0.17197.
  it("has diamond's dispersion, critical angle and reflectance", () => {
    expect(getDiamondIndex(0.4308) - getDiamondIndex(0.6867)).toBeCloseTo(0.04444, 5);
    expect(getCriticalAngleDeg(DIAMOND_INDEX)).toBeCloseTo(24.4397, 4);
    expect(getReflectance(1, DIAMOND_INDEX)).toBeCloseTo(0.17197, 5);
  });

  it("reflects everything from the critical angle on, and less below it", () => {
    const critical = getCriticalAngleDeg(DIAMOND_INDEX);
    expect(getReflectance(Math.cos((critical + 0.001) * DEG), DIAMOND_INDEX)).toBe(1);
    expect(getReflectance(Math.cos((critical - 0.5) * DEG), DIAMOND_INDEX)).toBeLessThan(0.7);
    expect(getReflectance(0, DIAMOND_INDEX)).toBe(1);
  });

  // Brewster's angle 67.523 (check-values.md 2.5): light polarised in the plane of incidence is not reflected,
  // so half of ((n^2 - 1) / (n^2 + 1))^2 is (the textbook form, from memory).
  it("reflects at Brewster's angle what the other polarisation gives", () => {
    const inside = 90 - 67.523;
    const square = DIAMOND_INDEX * DIAMOND_INDEX;
    expect(getReflectance(Math.cos(inside * DEG), DIAMOND_INDEX)).toBeCloseTo(
      ((square - 1) / (square + 1)) ** 2 / 2,
      4,
    );
  });

  it("bends light by Snell's law, in the plane of the normal", () => {
    for (const incidence of [0, 10, 34.5, 60, 89]) {
      const normal: Vec3 = [Math.sin(incidence * DEG), 0, Math.cos(incidence * DEG)];
      const direction = refractInward([0, 0, -1], normal, DIAMOND_INDEX);
      if (direction === null) throw new Error("the light should enter");
      const inside = Math.acos(-(direction[0] * normal[0] + direction[2] * normal[2]));
      expect(Math.hypot(...direction)).toBeCloseTo(1, 12);
      expect(direction[1]).toBe(0);
      expect(DIAMOND_INDEX * Math.sin(inside)).toBeCloseTo(Math.sin(incidence * DEG), 9);
    }
  });

  it("lets no light in from behind a facet or along it", () => {
    expect(refractInward([0, 0, -1], [0, 0, -1], DIAMOND_INDEX)).toBeNull();
    expect(refractInward([0, 0, -1], [1, 0, 0], DIAMOND_INDEX)).toBeNull();
  });

  it("undoes a reflection by the same reflection", () => {
    const normal = toUnitVec3([1, 2, -3]);
    const [x, y, z] = reflectPoint(reflectPoint([0.1, -0.2, 0.3], normal, 0.4), normal, 0.4);
    expect([x, y, z].map((value) => Math.round(value * 1e12) / 1e12)).toEqual([0.1, -0.2, 0.3]);
    const back = reflectDirection(reflectDirection([0, 0.6, -0.8], normal), normal);
    expect(Math.hypot(back[0], back[1] - 0.6, back[2] + 0.8)).toBeLessThan(1e-12);
  });
});
