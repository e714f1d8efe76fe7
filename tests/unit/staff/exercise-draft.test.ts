import { describe, expect, it } from "vitest";
import { type ExerciseDraft, findExerciseFaults, toExerciseInput } from "@/components/staff/exercise-draft";
import { fromZoneText, toZoneText } from "@/components/staff/zone-text";

const DRAFT: ExerciseDraft = {
  sectionId: "s",
  title: " First look ",
  notes: "",
  opensAt: "2026-11-25T09:00:00.000Z",
  dueAt: "2026-12-02T09:00:00.000Z",
  closesAt: "",
  debriefsAt: "",
  preparation: "asked",
  schoolRules: " Ask first. ",
  proofs: "none",
  areProofsRequired: false,
  isDottingOn: true,
  burstDots: 6,
  burstGapS: 1.5,
  minutesPerStone: "",
  attempts: 1,
  isInOrder: false,
  areLabelsHidden: false,
  orientation: "free",
  stoneIds: ["b", "a"],
  stoneOpenings: {},
};
const pathsOf = (part: Partial<ExerciseDraft>) =>
  findExerciseFaults({ ...DRAFT, ...part }).map(({ path }) => path);

describe("an exercise's draft", () => {
  it("finds nothing wrong with one that is complete", () => {
    expect(pathsOf({})).toEqual([]);
    expect(pathsOf({ closesAt: DRAFT.dueAt })).toEqual([]);
  });

  it("names each field that is still open", () => {
    expect(pathsOf({ sectionId: "", title: " ", opensAt: "", dueAt: "", stoneIds: [] })).toEqual([
      "sectionId",
      "title",
      "opensAt",
      "dueAt",
      "stoneIds",
    ]);
  });

  it("compares instants, whatever their number of decimals", () => {
    expect(pathsOf({ dueAt: "2026-11-25T09:00:00Z" })).toEqual(["dueAt"]);
    expect(pathsOf({ closesAt: "2026-12-01T09:00:00Z" })).toEqual(["closesAt"]);
    expect(pathsOf({ closesAt: "2026-12-02T09:00:00Z" })).toEqual([]);
  });

  it("takes whole minutes or none, and numbers of dotting only where the note is on", () => {
    expect(pathsOf({ minutesPerStone: 20 })).toEqual([]);
    expect(pathsOf({ minutesPerStone: 0 })).toEqual(["minutesPerStone"]);
    expect(pathsOf({ minutesPerStone: 2.5, burstDots: 1, burstGapS: "" })).toEqual([
      "burstDots",
      "burstGapS",
      "minutesPerStone",
    ]);
    expect(pathsOf({ isDottingOn: false, burstDots: "", burstGapS: "" })).toEqual([]);
  });

  it("is sent with what the bench asks for", () => {
    const order = { attempts: 3, isInOrder: true, areLabelsHidden: true };
    const bench = { proofs: "dots", areProofsRequired: true, minutesPerStone: 20, burstGapS: 0.8 };
    const draft = { ...DRAFT, ...order, ...bench };
    expect(toExerciseInput(draft as ExerciseDraft).rules).toEqual({
      preparation: "asked",
      schoolRules: "Ask first.",
      proofs: "dots",
      areProofsRequired: true,
      dotting: { isOn: true, burstDots: 6, burstGapMs: 800 },
      minutesPerStone: 20,
      attempts: 3,
      isInOrder: true,
      areLabelsHidden: true,
    });
    expect(toExerciseInput({ ...DRAFT, areProofsRequired: true }).rules.areProofsRequired).toBe(false);
  });

  it("takes an opening for a chosen stone between its own and the due date, and sends those alone", () => {
    const late = "2026-11-30T09:00:00.000Z";
    const stoneOpenings = { a: late, b: "", gone: "2020-01-01T00:00:00.000Z" };
    expect(pathsOf({ stoneOpenings })).toEqual([]);
    expect(toExerciseInput({ ...DRAFT, stoneOpenings }).stoneOpenings).toEqual({ a: late });
    expect(pathsOf({ stoneOpenings: { a: "2026-11-25T08:59:00.000Z", b: DRAFT.dueAt } })).toEqual([
      "stoneOpenings.b",
      "stoneOpenings.a",
    ]);
    expect(pathsOf({ dueAt: "", stoneOpenings })).toEqual(["dueAt"]);
  });

  it("is sent trimmed, open-ended as null, the stones in their order", () => {
    expect(toExerciseInput(DRAFT)).toMatchObject({
      title: "First look",
      closesAt: null,
      rules: { preparation: "asked", schoolRules: "Ask first." },
      stoneIds: ["b", "a"],
    });
  });
});

describe("instants in the browser's zone", () => {
  it("go to a field's text and back without loss to the minute", () => {
    for (const iso of ["2026-11-25T09:30:00.000Z", "2026-03-29T00:15:00.000Z", "2026-07-01T23:59:00.000Z"]) {
      expect(fromZoneText(toZoneText(iso))).toBe(iso);
    }
  });

  it("are empty where there is none", () => {
    expect(toZoneText("")).toBe("");
    expect(toZoneText("soon")).toBe("");
    expect(fromZoneText("")).toBe("");
    expect(fromZoneText("2026-11-")).toBe("");
  });
});
