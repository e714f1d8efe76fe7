import { describe, expect, it } from "vitest";
import type { DebriefRow } from "@/components/debrief/debrief-row";
import { listReviewNotes } from "@/components/debrief/list-review-notes";
import { createCalloutWords } from "@/components/debrief/to-callout-words";
import { toRulingWords } from "@/components/debrief/to-ruling-words";
import type { PlottedMark, ReferenceMark } from "@/lib/plot/mark";
import type { Ruling } from "@/lib/plot/overrule";
import type { DebriefView } from "@/lib/plot/student-view";

const REFERENCE = [
  { id: "a", characteristic: "crystal" },
  { id: "grain-centre", characteristic: "grain-centre" },
] as unknown as ReferenceMark[];
const say = createCalloutWords(
  [{ id: "m1" }, { id: "m2" }] as unknown as PlottedMark[],
  { marks: REFERENCE, decoys: [] },
  (side, id) => (side === "plotted" ? id.slice(1) : id === "a" ? "2" : null),
);
const row = (key: string, partnerKey: string | null, callout: string) =>
  ({ key, partnerKey, callout, title: "crystal" }) as DebriefRow;
const ROWS = [row("mark:m2", "reference:a", "2"), row("reference:b", null, "3")];
const note = (commentId: string, subject: string | null) => ({
  commentId,
  subject,
  text: `about ${commentId}`,
  byName: "Iris",
});
const VIEW = {
  reference: { marks: REFERENCE },
  overrules: [
    { overruleId: "o", ruling: { kind: "cause", mark: "m1", cause: null }, reason: "seen", byName: "Otto" },
  ],
  comments: [note("mark", "mark:m2"), note("whole", null), note("gone", "reference:gone")],
} as unknown as DebriefView;

describe("a list of what staff wrote", () => {
  it("puts what is about the whole first, then overrules, then what is about a mark, each under its own name", () => {
    expect(listReviewNotes(VIEW, ROWS, say).map(({ about, text }) => [about, text])).toEqual([
      [null, "about whole"],
      [null, "about gone"],
      ["Overruled: Mark 1: not held against the plot.", "seen"],
      ["On 2 crystal:", "about mark"],
    ]);
  });
});

describe("a ruling in words", () => {
  const toWords = (ruling: Ruling) => toRulingWords(VIEW, say, ruling);

  it("names the reference's mark by its number where that is another than the plotted mark's", () => {
    expect(toWords({ kind: "apart", mark: "m1", reference: "a" })).toBe(
      "Mark 1 is not the reference’s crystal 2",
    );
    expect(toWords({ kind: "together", mark: "m2", reference: "a", place: "full" })).toBe(
      "Mark 2 is the reference’s crystal, in place",
    );
  });

  it("says nothing twice of a mark whose id is its characteristic, and says so of one that is gone", () => {
    expect(toWords({ kind: "together", mark: "m1", reference: "grain-centre", place: "measured" })).toBe(
      "Mark 1 is the reference’s grain centre",
    );
    expect(toWords({ kind: "apart", mark: "m1", reference: "b" })).toBe(
      "Mark 1 is not a mark the reference no longer has",
    );
  });
});
