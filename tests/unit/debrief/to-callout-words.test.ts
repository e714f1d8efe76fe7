import { expect, it } from "vitest";
import { createCalloutWords } from "@/components/debrief/to-callout-words";
import type { PlottedMark, ReferenceMark } from "@/lib/plot/mark";

const shape = { kind: "dot", at: [0, 0] } as const;
const plotted = (id: string): PlottedMark => ({
  id,
  view: "crown",
  characteristic: "crystal",
  shape: { ...shape, at: [0, 0] },
});
const reference = (id: string, characteristic = "crystal"): ReferenceMark => ({
  id,
  view: "crown",
  characteristic,
  shape: { ...shape, at: [0, 0] },
});

const say = createCalloutWords(
  [plotted("m1"), plotted("m1-abc"), plotted("m12")],
  {
    marks: [
      reference("a"),
      reference("crystal-2"),
      reference("tw (1)", "twinning-wisp"),
      reference("needle", "needle"),
    ],
    decoys: [{ id: "behind-a", view: "pavilion", cause: "echo", shape: { ...shape, at: [0, 0] } }],
  },
  (side, id) => {
    const numbers: Record<string, string> = { m1: "4", "m1-abc": "5", m12: "6", a: "5", "tw (1)": "7" };
    return side === "plotted" || id !== "crystal-2" ? (numbers[id] ?? null) : null;
  },
);

it("names marks by their numbers, the longest id first", () => {
  expect(say("crystal a: found by mark m1-abc, and mark m1 or mark m12.")).toBe(
    "crystal 5: found by mark 5, and mark 4 or mark 6.",
  );
});

it("drops the id of a reference mark that has no number, and takes signs in an id as they are", () => {
  expect(say("crystal crystal-2 and twinning wisp tw (1)")).toBe("crystal and twinning wisp 7");
});

it("gives a decoy no name: it has no number on the diagram", () => {
  expect(say("It lies on decoy behind-a, a place that misleads.")).toBe(
    "It lies on a decoy, a place that misleads.",
  );
});

it("leaves other words alone", () => {
  const text = "needle: overlooked; a crystal about here; bookmark m1x; 12% of mark m13";
  expect(say(text)).toBe(text);
});
