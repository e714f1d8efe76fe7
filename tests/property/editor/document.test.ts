import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  applyChange,
  createAddition,
  createEmptyChange,
  createRemoval,
  createUpdate,
  type DocumentChange,
  isEmptyChange,
  reverseChange,
  squashChanges,
  toMarksChange,
} from "@/lib/editor/document-change";
import { createDocument, getNextOrder, listMarks, type PlotDocument } from "@/lib/editor/plot-document";
import type { PlottedMark } from "@/lib/plot/mark";
import { rebuildSitting, type SittingEvent } from "@/lib/plot/sitting-event";
import { createDot } from "@/tests/support/editor-harness";

/** A step on a document: what to do, which mark, and to what. */
const stepArbitrary = fc.record({
  what: fc.constantFrom("add", "update", "remove"),
  which: fc.nat(7),
  x: fc.integer({ min: -40, max: 40 }).map((x) => x / 100),
});
type Step = typeof stepArbitrary extends fc.Arbitrary<infer T> ? T : never;
type Change = DocumentChange<PlottedMark>;
type Plot = PlotDocument<PlottedMark>;

/** The change that a step asks for on a document; the empty change where it asks for nothing that can be done. */
function toChange(document: Plot, { what, which, x }: Step, count: number): Change {
  const id = `m${which}`;
  const record = document.byId.get(id);
  if (what === "add" && record === undefined) {
    return createAddition({ mark: createDot(id, [x, 0], count), order: getNextOrder(document) });
  }
  if (what === "update" && record !== undefined) {
    return createUpdate(record, { ...record.mark, shape: { kind: "dot", at: [x, 0] } });
  }
  if (what === "remove" && record !== undefined) return createRemoval([record]);
  return createEmptyChange();
}

/** Runs steps from an empty document, keeping every change and every document on the way. */
function run(steps: readonly Step[]): { changes: Change[]; documents: Plot[] } {
  const changes: Change[] = [];
  const documents: Plot[] = [createDocument<PlottedMark>([])];
  steps.forEach((step, count) => {
    const document = documents.at(-1) as Plot;
    const change = toChange(document, step, count);
    changes.push(change);
    documents.push(applyChange(document, change));
  });
  return { changes, documents };
}

const stepsArbitrary = fc.array(stepArbitrary, { maxLength: 30 });

describe("changes", () => {
  it("are taken back by their reverse (SPEC 2.2, 2.3)", () => {
    fc.assert(
      fc.property(stepsArbitrary, (steps) => {
        const { changes, documents } = run(steps);
        changes.forEach((change, i) => {
          expect(applyChange(documents[i + 1] as Plot, reverseChange(change)).byId).toEqual(
            documents[i]?.byId,
          );
          expect(reverseChange(reverseChange(change))).toEqual(change);
        });
      }),
    );
  });

  it("squash to what they do one by one (SPEC 2.4)", () => {
    fc.assert(
      fc.property(stepsArbitrary, (steps) => {
        const { changes, documents } = run(steps);
        const squashed = squashChanges(changes);
        expect(applyChange(documents[0] as Plot, squashed).byId).toEqual(documents.at(-1)?.byId);
        expect(applyChange(documents.at(-1) as Plot, reverseChange(squashed)).byId).toEqual(
          documents[0]?.byId,
        );
      }),
    );
  });

  it("squash associatively, with the empty change as neutral element (SPEC 2.4)", () => {
    fc.assert(
      fc.property(stepsArbitrary, fc.nat(30), fc.nat(30), (steps, a, b) => {
        const { changes } = run(steps);
        const [low, high] = a < b ? [a, b] : [b, a];
        const parts = [changes.slice(0, low), changes.slice(low, high), changes.slice(high)].map(
          squashChanges,
        );
        const [x, y, z] = parts as [Change, Change, Change];
        const left = squashChanges([squashChanges([x, y]), z]);
        expect(squashChanges([x, squashChanges([y, z])])).toEqual(left);
        expect(left).toEqual(squashChanges(changes));
        expect(squashChanges([x, createEmptyChange()])).toEqual(x);
        expect(squashChanges([createEmptyChange(), x])).toEqual(x);
      }),
    );
  });

  it("squash with their reverse to nothing (SPEC 2.5)", () => {
    fc.assert(
      fc.property(stepsArbitrary, (steps) => {
        for (const change of run(steps).changes) {
          expect(isEmptyChange(squashChanges([change, reverseChange(change)]))).toBe(true);
        }
      }),
    );
  });

  it("leave alone what they are given (SPEC 2.1)", () => {
    fc.assert(
      fc.property(stepsArbitrary, (steps) => {
        const { changes, documents } = run(steps);
        const before = structuredClone({ changes, documents });
        squashChanges(changes);
        changes.forEach((change, i) => {
          reverseChange(change);
          applyChange(documents[i] as Plot, change);
        });
        const undone = changes.map(reverseChange);
        undone
          .reverse()
          .reduce((document, change) => applyChange(document, change), documents.at(-1) as Plot);
        expect({ changes, documents }).toEqual(before);
      }),
    );
  });

  it("replay as the log of a sitting to the same marks (SPEC 2.6)", () => {
    fc.assert(
      fc.property(stepsArbitrary, (steps) => {
        const { changes, documents } = run(steps);
        const events = changes.map((change, i): SittingEvent => {
          const { put, removed } = toMarksChange(change);
          return { kind: "marks", seq: i + 1, atMs: i, put: [...put], removed: [...removed] };
        });
        const replayed = rebuildSitting(events).plot.marks;
        expect(listMarks(createDocument(replayed))).toEqual(listMarks(documents.at(-1) as Plot));
      }),
    );
  });
});
