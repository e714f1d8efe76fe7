/** A plotted mark as a reading lays it on the reference: mirrored left to right first, then turned as the stone turns. */
import { turnPoint, type View } from "@/lib/gem/point";
import { mapVertices, type Shape } from "@/lib/plot/shape";

export interface Laying {
  readonly turnDeg: number;
  readonly mirrored: boolean;
}

/** How each view is laid; both alike but where one view alone fits otherwise. */
export type ViewLayings = Readonly<Record<View, Laying>>;

export const AS_DRAWN: Laying = { turnDeg: 0, mirrored: false };

export const layAlike = (laying: Laying): ViewLayings => ({ crown: laying, pavilion: laying });

/** The shape where it comes to lie, in the same view. */
export function layShape(view: View, shape: Shape, { turnDeg, mirrored }: Laying): Shape {
  if (turnDeg === 0 && !mirrored) return shape;
  return mapVertices(shape, ([x, y]) => turnPoint(view, mirrored ? [-x, y] : [x, y], turnDeg));
}
