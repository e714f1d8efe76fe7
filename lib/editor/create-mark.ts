/** How a placed shape becomes a mark of the mode's own kind. */
import type { MarkDraft, ReferenceDrawing } from "@/lib/editor/drawn-mark";
import type { PlottedMark } from "@/lib/plot/mark";

/** A student's mark, stamped with when it was placed. Throws RangeError for a decoy, which a plot cannot hold. */
export function createPlottedMark({ id, view, shape, subject, atMs }: MarkDraft): PlottedMark {
  if (subject.kind === "decoy") throw new RangeError("createPlottedMark: a plot holds no decoys");
  return { id, view, characteristic: subject.name, shape, atMs: Math.max(0, Math.round(atMs)) };
}

/** A reference mark or a decoy, by its subject. */
export function createReferenceDrawing({ id, view, shape, subject }: MarkDraft): ReferenceDrawing {
  return subject.kind === "decoy"
    ? { id, view, cause: subject.cause, shape }
    : { id, view, characteristic: subject.name, shape };
}
