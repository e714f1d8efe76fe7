import { describe, expect, it } from "vitest";
import { addToDraft } from "@/components/evidence/add-to-draft";
import { buildEvidenceLayers } from "@/components/evidence/build-evidence-layers";
import { listEvidenceWords } from "@/components/evidence/suggestion-words";
import { toReferenceDraft } from "@/components/stone/reference-draft";
import { buildStoneEvidence } from "@/lib/agreement/build-stone-evidence";
import type { EvidenceInput, FirstHandIn, LaidMark } from "@/lib/agreement/stone-evidence";
import type { Cause } from "@/lib/plot/mark";
import type { Reference } from "@/lib/plot/stone";

const mark = (x: number, y: number, cause: Cause | null, characteristic = "crystal"): LaidMark => ({
  view: "crown",
  shape: { kind: "dot", at: [x, y] },
  at: [x, y],
  characteristic,
  cause,
});

/** So many students, one a day; `draw` gives the marks of each. */
const handInAll = (students: number, draw: (index: number) => LaidMark[]): FirstHandIn[] =>
  Array.from({ length: students }, (_, index) => ({
    by: `student-${index}`,
    handedInAt: new Date(Date.UTC(2026, 0, 1 + index)).toISOString(),
    marks: draw(index),
    found: index % 2 === 0 ? ["a"] : [],
    overlooked: index % 2 === 0 ? ["b"] : ["a", "b"],
  }));

const REFERENCE: Reference = {
  grades: { clarity: "SI1" },
  marks: [
    { id: "a", view: "crown", characteristic: "crystal", shape: { kind: "dot", at: [-0.3, 0] } },
    { id: "b", view: "crown", characteristic: "feather", shape: { kind: "dot", at: [-0.3, 0.2] } },
  ],
  decoys: [],
};

const build = (handIns: FirstHandIn[], more: Partial<EvidenceInput> = {}) =>
  buildStoneEvidence({
    handIns,
    reference: REFERENCE,
    area: Math.PI / 4,
    damage: new Set(["scratch", "nick"]),
    dismissals: [],
    ...more,
  });

const jitter = (index: number) => 0.002 * (index % 5);
const echoes = handInAll(20, (i) => (i % 2 === 0 ? [mark(0.2 + jitter(i), 0.1, "echo")] : []));
const missed = handInAll(20, (i) =>
  i % 2 === 0 ? [mark(0.2 + jitter(i), 0.1, "unexplained", "pinpoint")] : [],
);
const scratched = handInAll(20, (i) =>
  i >= 12 ? [mark(0.2 + jitter(i), 0.1, "unexplained", "scratch")] : [],
);

describe("what is suggested", () => {
  it("is a decoy where most strays have one cause, a missed feature where nothing explains them", () => {
    expect(build(echoes).suggestions).toMatchObject([
      { proposes: "decoy", students: 10, of: 20, causes: [{ name: "echo" }] },
    ]);
    expect(build(missed).suggestions).toMatchObject([
      { proposes: "missed", characteristics: [{ name: "pinpoint", students: 10 }] },
    ]);
  });

  it("is fresh damage where a surface mark appears only from a date on", () => {
    const [found] = build(scratched).suggestions;
    expect(found).toMatchObject({ proposes: "damage", before: 12, firstSeenAt: "2026-01-13T00:00:00.000Z" });
    // Eight of twenty, all after the twelfth: 8! 12! / 20!, as C(8, 8) / C(20, 8) = 1 / 125970.
    expect(found?.lateChance).toBeCloseTo(1 / 125970, 12);
    const always = handInAll(20, (i) => (i % 2 === 0 ? [mark(0.2, 0.1, "unexplained", "scratch")] : []));
    expect(build(always).suggestions).toMatchObject([{ proposes: "missed" }]);
  });

  it("is nothing for few students, and nothing that the newest reference explains", () => {
    expect(build(echoes.slice(0, 7)).suggestions).toEqual([]);
    const decoys = [
      {
        id: "x",
        view: "crown" as const,
        cause: "echo" as const,
        shape: { kind: "dot" as const, at: [0.205, 0.1] as [number, number] },
      },
    ];
    expect(build(echoes, { reference: { ...REFERENCE, decoys } }).suggestions).toEqual([]);
  });

  it("is the same in whatever order hand-ins come", () => {
    expect(build([...scratched].reverse())).toEqual(build(scratched));
  });

  it("stays away once set aside until half as many students again mark it", () => {
    const dismissals = [{ view: "crown" as const, at: [0.2, 0.1] as const, students: 10 }];
    expect(build(echoes, { dismissals })).toMatchObject({ suggestions: [], dismissed: 1 });
    const more = handInAll(30, (i) => (i % 2 === 0 ? [mark(0.2 + jitter(i), 0.1, "echo")] : []));
    expect(build(more, { dismissals }).suggestions).toHaveLength(1);
  });

  it("names no student", () => {
    expect(JSON.stringify(build(echoes))).not.toContain("student-");
  });
});

describe("what is overlooked", () => {
  it("is listed first, each student counted once", () => {
    expect(build(echoes).detection).toMatchObject([
      { id: "b", found: 0, of: 20 },
      { id: "a", found: 10, of: 20 },
    ]);
  });
});

describe("acting on a suggestion", () => {
  const [suggestion] = build(scratched).suggestions;
  if (suggestion === undefined) throw new Error("nothing is suggested");

  it("adds one mark or one decoy to the draft, with a note and an id of its own", () => {
    const draft = toReferenceDraft(REFERENCE);
    const once = addToDraft(draft, suggestion, "damage");
    expect(once.marks).toHaveLength(3);
    expect(once.marks[2]).toMatchObject({ id: "students-mark", characteristic: "scratch", view: "crown" });
    expect(once.note).toContain("8 of 20 students mark, seen since 2026-01-13");
    const twice = addToDraft(once, suggestion, "missed");
    expect(twice.marks[3]?.id).toBe("students-mark-2");
    expect(addToDraft(draft, suggestion, "decoy").decoys).toMatchObject([{ cause: "unexplained" }]);
  });

  it("is told in words with its numbers", () => {
    const words = listEvidenceWords(suggestion).join(" ");
    for (const part of ["8 of 20 students", "scratch (8)", "2026-01-13", "None of the 12 students"]) {
      expect(words).toContain(part);
    }
  });

  it("is drawn over the density, which never needs colour: discs differ in size", () => {
    const layers = buildEvidenceLayers(build(echoes), REFERENCE);
    expect(layers.map(({ id }) => id)).toEqual(["density", "singles", "reference", "suggestions"]);
    const radii = layers[0]?.items.map(({ discRadius }) => discRadius ?? 0) ?? [];
    expect(Math.max(...radii)).toBeCloseTo(0.025, 12);
  });
});
