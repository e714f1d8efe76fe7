import { describe, expect, it } from "vitest";
import { buildDebriefLayers } from "@/components/debrief/build-debrief-layers";
import {
  createDebriefWords,
  listDebriefRows,
  toMarkKey,
  toReferenceKey,
} from "@/components/debrief/debrief-row";
import { AS_DRAWN, layAlike, layShape } from "@/components/debrief/lay-mark";
import { findOtherFit, layOtherwise, toFitWords, toLayingWords } from "@/components/debrief/other-fit";
import { countFramesUntil, listReplayFrames, toClockWords } from "@/components/debrief/replay-sitting";
import { getDemoSkill } from "@/lib/demo/demo-skills";
import { type SimulatedStone, simulateSitting } from "@/lib/demo/simulate-sitting";
import { DEFAULT_RULES } from "@/lib/plot/exercise-rules";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";
import { toReference } from "@/lib/plot/stone";
import { type DebriefView, DebriefViewSchema } from "@/lib/plot/student-view";
import { scorePlot } from "@/lib/scoring/score-plot";
import { listSimulatedStones } from "@/tests/support/list-simulated-stones";

/** A whole debrief of a simulated sitting, scored by the engine itself. */
function simulateDebrief(simulated: SimulatedStone, login: string): DebriefView {
  const { stone, scales, characteristics } = simulated;
  const { plot, events } = simulateSitting(simulated, getDemoSkill(login), `${login}/${stone.id}`);
  const { id, grades: _grades, marks: _marks, decoys: _decoys, ...body } = stone;
  const reference = toReference(stone);
  const scored = scorePlot({
    stoneId: id,
    by: login,
    stone,
    reference,
    plot,
    rubric: DEFAULT_RUBRIC,
    scales,
    characteristics,
  });
  return DebriefViewSchema.parse({
    sittingId: "s",
    exerciseId: "e",
    exerciseTitle: "An exercise",
    studentName: "A student",
    stone: { label: id, ...body },
    scales,
    characteristics: [...characteristics.values()].map((one) => ({ ...one, like: [...one.like] })),
    openedAt: "2026-11-25T09:00:00.000Z",
    handedInAt: "2026-11-25T10:00:00.000Z",
    timedOut: false,
    dotting: DEFAULT_RULES.dotting,
    releasedAt: null,
    plot,
    prepared: {},
    reference,
    referenceVersion: 1,
    rubricVersion: 1,
    near: DEFAULT_RUBRIC.near,
    far: DEFAULT_RUBRIC.far,
    ...scored,
    events,
    notes: [],
    overrules: [],
    comments: [],
  });
}

const CASES = listSimulatedStones().flatMap((simulated) =>
  ["student1", "student5", "student9"].map((login) => ({
    name: `${simulated.stone.id} by ${login}`,
    simulated,
    view: simulateDebrief(simulated, login),
  })),
);

describe.each(CASES)("the debrief of $name", ({ simulated, view }) => {
  const rows = listDebriefRows(view);

  it("has a row for every plotted mark and every overlooked one, and none besides", () => {
    const keys = new Set(rows.map(({ key }) => key));
    const expected = [
      ...view.plot.marks.map(({ id }) => toMarkKey(id)),
      ...view.result.overlooked.map((id) => toReferenceKey(id)),
    ];
    expect([...keys].sort()).toEqual([...new Set(expected)].sort());
  });

  it("numbers the rows so that no two things share a callout", () => {
    const callouts = new Map(rows.map(({ key, callout }) => [key, callout]));
    expect(new Set(callouts.values()).size).toBe(callouts.size);
    expect([...callouts.values()]).not.toContain("");
  });

  it("says nothing by an id that is not on the diagram", () => {
    const say = createDebriefWords(view);
    const texts = [
      ...rows.flatMap(({ words }) => words),
      ...view.result.lines.map(({ what }) => say(what)),
      ...view.detail.practise.map(say),
    ];
    for (const text of texts) expect(text).not.toMatch(/mark m\d+(?!\d)-|mark m\d/);
  });

  it("draws each thing once, by keys that are unique over all layers", () => {
    const { turnDeg } = view.result.alignment;
    const layers = buildDebriefLayers(view, rows, layAlike({ turnDeg, mirrored: false }), "Plot");
    const keys = layers.flatMap(({ items }) => items.map(({ key }) => key));
    expect(new Set(keys).size).toBe(keys.length);
    const plot = layers.find(({ id }) => id === "plot");
    expect(plot?.items).toHaveLength(view.plot.marks.length);
    expect(layers.find(({ id }) => id === "reference")?.items).toHaveLength(view.reference.marks.length);
    const links = plot?.links?.filter(({ style }) => style === "found") ?? [];
    expect(links.length).toBeLessThanOrEqual(view.result.found.length);
  });

  it("plays back to exactly the plot that was handed in", () => {
    const frames = listReplayFrames(view.events, simulated.solid);
    expect(frames).toHaveLength(view.events.length);
    expect([...(frames.at(-1)?.marks ?? [])].map(({ id }) => id).sort()).toEqual(
      view.plot.marks.map(({ id }) => id).sort(),
    );
    for (const { words } of frames) expect(words).not.toBe("");
    expect(countFramesUntil(frames, Number.POSITIVE_INFINITY)).toBe(frames.length);
    expect(countFramesUntil(frames, -1)).toBe(0);
  });
});

describe("laying a plot", () => {
  it("mirrors first and then turns as the stone turns, clockwise in the crown view", () => {
    const dot = { kind: "dot", at: [0.3, 0] } as const;
    const laid = layShape("crown", { ...dot, at: [0.3, 0] }, { turnDeg: 90, mirrored: true });
    // Mirrored to 9 o'clock, turned a quarter clockwise to 12 o'clock.
    expect(laid.kind === "dot" && laid.at[0]).toBeCloseTo(0, 12);
    expect(laid.kind === "dot" && laid.at[1]).toBeCloseTo(0.3, 12);
    const shape = { kind: "dot" as const, at: [0.1, 0.2] as [number, number] };
    expect(layShape("pavilion", shape, AS_DRAWN)).toBe(shape);
  });

  it("lays one view otherwise where that view alone fits, and the other as it counts (rule 3.5)", () => {
    const { view } = CASES[0] as (typeof CASES)[number];
    const viewFit = { view: "pavilion", turnDeg: -90, mirrored: true, gain: 30 } as const;
    const alone = { ...view, detail: { ...view.detail, viewFit } };
    alone.result = { ...view.result, alignment: { turnDeg: 45, wouldFit: null } };
    expect(layOtherwise(alone)).toEqual({
      crown: { turnDeg: 45, mirrored: false },
      pavilion: { turnDeg: -90, mirrored: true },
    });
    const whole = { turnDeg: 22.5, mirrored: false, gain: 40 };
    alone.result = { ...view.result, alignment: { turnDeg: 0, wouldFit: whole } };
    expect(findOtherFit(alone)).toEqual({ ...whole, view: null });
    expect(layOtherwise(alone)).toEqual(layAlike({ turnDeg: 22.5, mirrored: false }));
  });

  it("names a turn as it is seen in the view that is laid", () => {
    const laying = { turnDeg: -90, mirrored: true };
    // Turned counter-clockwise as the crown is seen, a stone that lies on its table turns clockwise.
    expect(toLayingWords(laying, "pavilion")).toBe("mirrored and turned by 90° clockwise");
    expect(toLayingWords(laying)).toBe("mirrored and turned by 90° counter-clockwise");
    const { view } = CASES[0] as (typeof CASES)[number];
    const read = { ...view, result: { ...view.result, alignment: { turnDeg: -90, wouldFit: null } } };
    expect(toFitWords({ ...laying, view: "pavilion", gain: 20 }, read)).toBe("mirrored");
    expect(toFitWords({ ...laying, view: null, gain: 20 }, read)).toBe(toLayingWords(laying));
    expect(toLayingWords(AS_DRAWN, "crown")).toBe("left as it was drawn");
  });
});

it("writes times of a sitting as a clock does", () => {
  expect([0, 999, 61_000, 3_723_000].map(toClockWords)).toEqual(["0:00", "0:00", "1:01", "1:02:03"]);
});
