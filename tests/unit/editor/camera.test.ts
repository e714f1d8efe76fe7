import { describe, expect, it } from "vitest";
import {
  clampCamera,
  fromScreenPx,
  getPxPerWidth,
  panCamera,
  revealPoint,
  toScreenPx,
  WHOLE_VIEW,
  zoomCamera,
} from "@/lib/editor/camera";
import { createDot, openEditor } from "@/tests/support/editor-harness";

const VIEWPORT = { sizePx: 600, halfWidth: 0.6 };

describe("the camera (SPEC 6)", () => {
  it("shows the whole view at zoom 1, y up", () => {
    expect(toScreenPx(WHOLE_VIEW, VIEWPORT, [0, 0])).toEqual([300, 300]);
    expect(toScreenPx(WHOLE_VIEW, VIEWPORT, [0.5, 0.5])).toEqual([550, 50]);
    expect(getPxPerWidth(WHOLE_VIEW, VIEWPORT)).toBe(500);
    expect(getPxPerWidth({ zoom: 8, centre: [0, 0] }, VIEWPORT)).toBe(4000);
  });

  it("goes from the screen and back", () => {
    const camera = { zoom: 3.3, centre: [0.1, -0.2] as const };
    const [x, y] = toScreenPx(camera, VIEWPORT, fromScreenPx(camera, VIEWPORT, [123, 456]));
    expect(x).toBeCloseTo(123, 9);
    expect(y).toBeCloseTo(456, 9);
  });

  it("zooms from 1 to 8 and stays within the view", () => {
    expect(clampCamera({ zoom: 20, centre: [9, -9] }, 0.6)).toEqual({ zoom: 8, centre: [0.525, -0.525] });
    expect(clampCamera({ zoom: 0.1, centre: [0.3, 0] }, 0.6)).toEqual({ zoom: 1, centre: [0, 0] });
    expect(panCamera({ zoom: 2, centre: [0, 0] }, 5, 0, 0.6).centre[0]).toBeCloseTo(0.3, 9);
  });

  it("keeps the point under the pointer where it is", () => {
    const camera = zoomCamera(WHOLE_VIEW, 3, [0.2, 0.1], 0.6);
    const before = toScreenPx(WHOLE_VIEW, VIEWPORT, [0.2, 0.1]);
    const after = toScreenPx(camera, VIEWPORT, [0.2, 0.1]);
    expect(after[0]).toBeCloseTo(before[0], 9);
    expect(after[1]).toBeCloseTo(before[1], 9);
  });

  it("brings a selected mark into the window, and moves no farther (SPEC 6.3)", () => {
    const editor = openEditor([createDot("a", [0.4, 0])]);
    editor.dispatch({ kind: "zoom", view: "crown", factor: 8, anchor: [-0.4, 0] });
    editor.dispatch({ kind: "select", id: "a" });
    const camera = editor.state().cameras.crown;
    const halfWindow = 0.585 / 8;
    expect(Math.abs(0.4 - camera.centre[0])).toBeLessThanOrEqual(halfWindow);
    const near = { zoom: 4, centre: [0, 0] as const };
    expect(revealPoint(near, [0.05, 0.05], 0.6)).toEqual(near);
  });
});
