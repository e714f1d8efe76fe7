/** What is being done right now and is not in the document yet. One gesture becomes one undo entry (SPEC.md 3). */
import type { Point, View } from "@/lib/gem/point";
import type { Shape } from "@/lib/plot/shape";

/** The pointer is down with the dot tool; the dot is placed where it is let go. */
export interface PlacingDot {
  readonly kind: "placing-dot";
  readonly view: View;
  readonly at: Point;
}

/** A stroke or an outline in the making, by dragging (`freehand`) or corner by corner (`points`). */
export interface Drawing {
  readonly kind: "drawing";
  readonly shape: "stroke" | "outline";
  readonly view: View;
  /** Corners set so far. */
  readonly points: readonly Point[];
  /** Where the pointer is down, or null between two presses. */
  readonly pressed: Point | null;
  /** The line that the pointer has drawn since it went down, once it has moved far enough to be a drag. */
  readonly freehand: readonly Point[] | null;
}

/** A mark, or one vertex of it, that the pointer or the arrow keys are moving. */
export interface Changing {
  readonly kind: "moving" | "reshaping" | "nudging";
  readonly id: string;
  readonly view: View;
  readonly vertex: number | null;
  /** Where the pointer took hold; the centre of the view when nudging. */
  readonly from: Point;
  readonly before: Shape;
  readonly shape: Shape;
  /** False until the pointer has moved far enough to be a drag. */
  readonly isUnderWay: boolean;
}

/** The next press says where the mark, or one vertex of it, goes: moving without dragging (WCAG 2.2, 2.5.7). */
export interface Aiming {
  readonly kind: "aiming";
  readonly id: string;
  readonly vertex: number | null;
}

export type Gesture = PlacingDot | Drawing | Changing | Aiming;
