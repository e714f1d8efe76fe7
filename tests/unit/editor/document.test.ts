import { describe, expect, it } from "vitest";
import {
  applyChange,
  createAddition,
  createRemoval,
  createUpdate,
  squashChanges,
  toMarksChange,
} from "@/lib/editor/document-change";
import { createDocument, findMarkNumber, listMarks } from "@/lib/editor/plot-document";
import { joinReferenceDrawings, splitReferenceDrawings } from "@/lib/editor/reference-drawings";
import { createIdSuffix, createIdSupply } from "@/lib/editor/supply-ids";
import type { Decoy, ReferenceMark } from "@/lib/plot/mark";
import { createDot } from "@/tests/support/editor-harness";

const ids = (marks: readonly { id: string }[]) => marks.map(({ id }) => id);

describe("the document", () => {
  it("refuses an id that stands twice (SPEC 1.1)", () => {
    expect(() => createDocument([createDot("a", [0, 0]), createDot("a", [0, 0.1])])).toThrow(RangeError);
  });

  it("numbers marks in the order of placing, whatever the log's order (SPEC 1.2, 1.3)", () => {
    const document = createDocument([createDot("b", [0, 0], 200), createDot("a", [0, 0], 100)]);
    expect(ids(listMarks(document))).toEqual(["a", "b"]);
    expect(findMarkNumber(document, "b")).toBe(2);
    expect(findMarkNumber(document, "c")).toBeNull();
    expect(ids(listMarks(createDocument([createDot("b", [0, 0]), createDot("a", [0, 0], 1)])))).toEqual([
      "b",
      "a",
    ]);
  });

  it("brings a removed mark back to its own number (SPEC 1.2)", () => {
    const document = createDocument([createDot("a", [0, 0]), createDot("b", [0, 0]), createDot("c", [0, 0])]);
    const record = document.byId.get("b");
    if (record === undefined) throw new Error("b is gone");
    const without = applyChange(document, createRemoval([record]));
    expect(ids(listMarks(without))).toEqual(["a", "c"]);
    expect(ids(listMarks(applyChange(without, createAddition(record))))).toEqual(["a", "b", "c"]);
  });

  it("tells a change as the log keeps it (SPEC 2.6)", () => {
    const document = createDocument([createDot("a", [0, 0]), createDot("b", [0, 0])]);
    const [a, b] = [document.byId.get("a"), document.byId.get("b")];
    if (a === undefined || b === undefined) throw new Error("no records");
    const moved = createDot("a", [0.1, 0]);
    const fresh = createDot("c", [0.2, 0]);
    const change = squashChanges([
      createUpdate(a, moved),
      createRemoval([b]),
      createAddition({ mark: fresh, order: 2 }),
    ]);
    expect(toMarksChange(change)).toEqual({ put: [fresh, moved], removed: ["b"] });
    expect(() => createUpdate(a, fresh)).toThrow(RangeError);
  });

  it("never takes an id that is or was there (SPEC 1.4)", () => {
    const takeId = createIdSupply(["m2", "m7-abc", "a"], "");
    expect([takeId(), takeId()]).toEqual(["m8", "m9"]);
    expect(createIdSupply(["m1-xyz"], "xyz")()).toBe("m2-xyz");
    expect(createIdSuffix(() => 0)).toBe("aaa");
    expect(createIdSuffix()).toMatch(/^[a-z2-9]{3}$/);
  });

  it("joins a reference's marks and decoys, renaming a decoy that shares an id, and splits them again", () => {
    const shape = { kind: "dot" as const, at: [0, 0] as [number, number] };
    const marks: ReferenceMark[] = [
      { id: "a", view: "crown", characteristic: "crystal", shape },
      { id: "a-2", view: "crown", characteristic: "crystal", shape },
    ];
    const decoys: Decoy[] = [{ id: "a", view: "crown", cause: "echo", shape }];
    const joined = joinReferenceDrawings(marks, decoys);
    expect(new Set(ids(joined)).size).toBe(3);
    const split = splitReferenceDrawings(joined);
    expect(split.marks).toEqual(marks);
    expect(split.decoys).toMatchObject([{ cause: "echo", view: "crown" }]);
    expect(joinReferenceDrawings([], [])).toEqual([]);
  });
});
