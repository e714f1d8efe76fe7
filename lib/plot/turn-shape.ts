import { turnPoint, type View } from "@/lib/gem/point";
import { mapVertices, type Shape } from "@/lib/plot/shape";

/**
 * A plotted shape laid on its reference: turned with the stone by `turnDeg`, clockwise as the crown is seen, and so the other
 * way round in the pavilion view.
 */
export function turnShape(view: View, shape: Shape, turnDeg: number): Shape {
  return turnDeg === 0 ? shape : mapVertices(shape, (point) => turnPoint(view, point, turnDeg));
}
