/** What the editor draws: anything with an id, a view and a shape. Plotted marks, reference marks and decoys all are. */
import type { Point, View } from "@/lib/gem/point";
import type { Cause, Decoy, PlottedMark, ReferenceMark } from "@/lib/plot/mark";
import type { Shape } from "@/lib/plot/shape";

/** The least that the editor asks of a mark. */
export interface DrawnMark {
  readonly id: string;
  readonly view: View;
  readonly shape: Shape;
}

/** What the next mark will say that it is: a characteristic, or on a reference a place that misleads. */
export type MarkSubject =
  | { readonly kind: "characteristic"; readonly name: string }
  | { readonly kind: "decoy"; readonly cause: Cause };

/** What a mark is made from when it is placed. `atMs`: since the sitting opened. */
export interface MarkDraft {
  readonly id: string;
  readonly view: View;
  readonly shape: Shape;
  readonly subject: MarkSubject;
  readonly atMs: number;
}

/** One thing on a reference as it is drawn: a mark or a decoy, told apart by `cause`. */
export type ReferenceDrawing = ReferenceMark | Decoy;

/** Every kind of thing that an editor may hold. */
export type EditorMark = PlottedMark | ReferenceDrawing;

/** True for a decoy. */
export function isDecoy(mark: EditorMark): mark is Decoy {
  return "cause" in mark;
}

/** What a mark says that it is. */
export function getSubject(mark: EditorMark): MarkSubject {
  return isDecoy(mark)
    ? { kind: "decoy", cause: mark.cause }
    : { kind: "characteristic", name: mark.characteristic };
}

/** True when two subjects are the same. */
export function isSameSubject(a: MarkSubject, b: MarkSubject): boolean {
  if (a.kind === "decoy") return b.kind === "decoy" && a.cause === b.cause;
  return b.kind === "characteristic" && a.name === b.name;
}

/** A shape of the given kind over points in drawing order; a dot takes the first. Throws RangeError on none. */
export function toShape(kind: Shape["kind"], points: readonly Point[]): Shape {
  const [first] = points;
  if (first === undefined) throw new RangeError("toShape: a shape needs a point");
  if (kind === "dot") return { kind, at: [first[0], first[1]] };
  return { kind, points: points.map(([x, y]) => [x, y]) };
}
