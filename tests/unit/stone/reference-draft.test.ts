import { describe, expect, it } from "vitest";
import {
  findReference,
  listReferenceAdvice,
  parseReferenceDraft,
  type ReferenceDraft,
  toReferenceDraft,
} from "@/components/stone/reference-draft";

const mark = (id: string, more: object = {}) => ({
  id,
  view: "crown" as const,
  characteristic: "crystal",
  shape: { kind: "dot" as const, at: [0.1, 0.05] as [number, number] },
  ...more,
});
const draft = (part: Partial<ReferenceDraft>): ReferenceDraft => ({ ...toReferenceDraft(null), ...part });

describe("a reference's draft", () => {
  it("makes no reference before clarity is given, and says so as what blocks", () => {
    expect(findReference(draft({ marks: [mark("a")] }))).toBeNull();
    expect(listReferenceAdvice(draft({}), true)).toEqual([
      { text: expect.stringContaining("clarity"), blocks: true },
    ]);
  });

  it("advises nothing for a loupe-clean stone without marks", () => {
    expect(listReferenceAdvice(draft({ grades: { clarity: "Loupe-clean" } }), false)).toEqual([]);
  });

  it("asks for a mark that decides, a landmark for few marks, and a depth", () => {
    const few = draft({ grades: { clarity: "VS1" }, marks: [mark("a"), mark("b")] });
    expect(listReferenceAdvice(few, false)).toHaveLength(3);
    expect(listReferenceAdvice(few, true)).toHaveLength(2);
    const told = draft({
      grades: { clarity: "VS1" },
      marks: [mark("a", { decidesGrade: true, depth: 0.4 }), mark("b"), mark("c")],
    });
    expect(listReferenceAdvice(told, false)).toEqual([]);
  });

  it("counts optional marks for nothing", () => {
    const optional = draft({
      grades: { clarity: "VS1" },
      marks: [mark("a", { optional: true, depth: 0.2 })],
    });
    expect(listReferenceAdvice(optional, false)).toEqual([]);
  });

  it("comes back from what was kept, and throws away what is no draft", () => {
    const kept = draft({ grades: { clarity: "SI1" }, marks: [mark("a", { weight: 3 })], note: "first look" });
    expect(parseReferenceDraft(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
    expect(parseReferenceDraft({ marks: [] })).toBeNull();
    expect(parseReferenceDraft("old")).toBeNull();
  });
});
