import type { MarkOrigin } from "@/lib/demo/ground-truth";
import type { View } from "@/lib/gem/point";
import type { Shape } from "@/lib/plot/shape";

/** A mark that a simulated student will draw, before it has an id and a time. In the stone's own frame. */
export interface DraftMark {
  readonly view: View;
  readonly characteristic: string;
  readonly shape: Shape;
  readonly confidence: number;
  readonly origin: MarkOrigin;
  /** Number of the burst of dust dots that it belongs to; null for a mark drawn by itself. */
  readonly burst: number | null;
}
