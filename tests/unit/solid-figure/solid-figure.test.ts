import { describe, expect, it } from "vitest";
import { placeSolidMarks, type SolidMarkSource } from "@/components/solid-figure/place-solid-marks";
import {
  blendRotations,
  dragSolid,
  HOLDS,
  SLANT,
  toRotationWords,
  turnByKey,
} from "@/components/solid-figure/turn-solid";
import { getSolid } from "@/lib/gem/build-solid";
import { fromClockDeg } from "@/lib/gem/point";
import { projectVec3 } from "@/lib/gem/project-solid";
import type { ReferenceMark } from "@/lib/plot/mark";

const SOLID = getSolid("round-brilliant", {});
const TABLE = Math.max(...SOLID.vertices.map(([, , z]) => z));
const source = (mark: Partial<ReferenceMark>, isInside = true): SolidMarkSource => ({
  mark: { id: "a", view: "crown", characteristic: "crystal", shape: { kind: "dot", at: [0, 0] }, ...mark },
  isInside,
  label: "crystal",
  style: "inside",
  callout: "1",
});

describe("marks in the solid", () => {
  it("sink straight down under the table as the depth grows, with a line from the table to them", () => {
    const heights = [0.1, 0.5, 0.9].map((depth) => {
      const [mark] = placeSolidMarks(
        SOLID,
        [source({ depth, shape: { kind: "dot", at: [0.05, 0.02] } })],
        2.417,
      ).marks;
      const [at] = mark?.points ?? [];
      expect(at?.slice(0, 2)).toEqual([expect.closeTo(0.05, 9), expect.closeTo(0.02, 9)]);
      expect(mark?.sight?.[0][2]).toBeCloseTo(TABLE, 4);
      expect(mark?.sight?.[1]).toEqual(at);
      return at?.[2] ?? Number.NaN;
    });
    expect(heights).toEqual([...heights].sort((a, b) => b - a));
  });

  it("keep their shape, level at one depth, and mirrored as the pavilion view is", () => {
    const shape = {
      kind: "stroke",
      points: [
        [-0.1, 0.1],
        [0.1, 0.1],
      ],
    } satisfies ReferenceMark["shape"];
    const { marks } = placeSolidMarks(SOLID, [source({ view: "pavilion", shape, depth: 0.5 })], 2.417);
    const [from, to] = marks[0]?.points ?? [];
    if (from === undefined || to === undefined) throw new Error("the stroke was not placed");
    expect([to[0] - from[0], to[1] - from[1], to[2] - from[2]]).toEqual([expect.closeTo(-0.2, 9), 0, 0]);
  });

  it("lie on the facets when they are on the surface", () => {
    const shape = { kind: "dot", at: [0.1, 0] } satisfies ReferenceMark["shape"];
    const { marks } = placeSolidMarks(SOLID, [source({ shape }, false)], 2.417);
    expect(marks[0]?.points[0]?.[2]).toBeCloseTo(TABLE, 4);
    expect(marks[0]?.sight).toBeNull();
  });

  it("are left out and counted without a depth or outside the girdle", () => {
    const outside = source({ depth: 0.5, shape: { kind: "dot", at: [0.7, 0] } });
    expect(placeSolidMarks(SOLID, [source({}), outside], 2.417)).toEqual({
      marks: [],
      withoutDepth: 1,
      outside: 1,
    });
    expect(placeSolidMarks(SOLID, [], 2.417).marks).toEqual([]);
  });
});

describe("turning the solid", () => {
  it("brings the side that faces the viewer along with a drag", () => {
    for (const hold of [SLANT, { spinDeg: 0, tiltDeg: 90 }]) {
      const [x, y] = fromClockDeg("crown", 180 - hold.spinDeg, 0.5);
      const at = (rotation: typeof hold) => projectVec3([x, y, 0], rotation).at;
      expect(at(dragSolid(hold, 10, 0))[0]).toBeGreaterThan(at(hold)[0]);
      expect(at(dragSolid(hold, 0, 10))[1]).toBeLessThan(at(hold)[1]);
    }
  });

  it("comes back with the opposite key, stops at both views, and knows no other key", () => {
    for (const [key, back] of [
      ["ArrowLeft", "ArrowRight"],
      ["ArrowUp", "ArrowDown"],
    ] as const) {
      const turned = turnByKey(SLANT, key);
      expect(turned).not.toEqual(SLANT);
      expect(turned && turnByKey(turned, back)).toEqual(SLANT);
    }
    expect(dragSolid(SLANT, 0, 500).tiltDeg).toBe(0);
    expect(dragSolid(SLANT, 0, -500).tiltDeg).toBe(180);
    expect(turnByKey({ spinDeg: 200, tiltDeg: 3 }, "Home")).toEqual(SLANT);
    expect(turnByKey(SLANT, "a")).toBeNull();
  });

  it("goes over to another hold by the shorter way", () => {
    const [from, to] = [
      { spinDeg: 350, tiltDeg: 0 },
      { spinDeg: 10, tiltDeg: 90 },
    ];
    expect(blendRotations(from, to, 0.5)).toEqual({ spinDeg: 0, tiltDeg: 45 });
    expect(blendRotations(from, to, 1)).toEqual(to);
  });

  it("says how it is held by what really is up or near", () => {
    for (const { rotation } of HOLDS) {
      const words = toRotationWords(rotation);
      const hour = Number(/(\d+) o'clock/.exec(words)?.[1]);
      const [x, y] = fromClockDeg("crown", 30 * hour, 0.5);
      const seen = projectVec3([x, y, 0], rotation);
      if (words.endsWith("up")) expect(seen.at[1]).toBeGreaterThan(0.48);
      else expect(seen.nearness).toBeGreaterThan(0);
    }
    expect(toRotationWords({ spinDeg: 0, tiltDeg: 90 })).toBe(
      "from the side, table up, 6 o'clock towards you",
    );
    expect(toRotationWords({ spinDeg: 90, tiltDeg: 0 })).toBe("crown towards you, 9 o'clock up");
  });
});
