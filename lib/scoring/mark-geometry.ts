/**
 * What the engine measures of a shape, worked out once (SPEC 1). Coordinates lie as x, y, x, y … in typed arrays,
 * in the frame of the shape's view, in girdle widths.
 */
import type { Point } from "@/lib/gem/point";
import { listVertices, type Shape } from "@/lib/plot/shape";
import { findSmallestCircle } from "@/lib/scoring/find-smallest-circle";

/** Points along a stroke or an outline that stand for it. */
export const SAMPLE_COUNT = 24;
/** No shape counts as smaller than this across (girdle widths): a dot has no size of its own. */
export const SMALLEST_EXTENT = 0.015;

export interface MarkGeometry {
  readonly kind: Shape["kind"];
  readonly vertices: Float64Array;
  /** One point for a dot, 24 evenly spaced ones otherwise. */
  readonly samples: Float64Array;
  /** Mean of the samples. */
  readonly centreX: number;
  readonly centreY: number;
  /** Distance from that centre to the farthest vertex: the whole shape lies within it. */
  readonly reach: number;
  /** The centre's distance from the middle of the stone, and its angle there, counter-clockwise from x, in radians. */
  readonly radius: number;
  readonly angle: number;
  /** Diameter of the smallest circle round the vertices, at least `SMALLEST_EXTENT`. */
  readonly extent: number;
  readonly logExtent: number;
}

/** A rigid motion of one view: x' = xx x + xy y + dx, y' = yx x + yy y + dy. */
export interface Motion {
  readonly xx: number;
  readonly xy: number;
  readonly yx: number;
  readonly yy: number;
  readonly dx: number;
  readonly dy: number;
}

function getEdgeLengths(vertices: Float64Array, isClosed: boolean): Float64Array {
  const count = vertices.length / 2;
  const lengths = new Float64Array(isClosed ? count : count - 1);
  for (let i = 0; i < lengths.length; i += 1) {
    const j = i + 1 < count ? i + 1 : 0;
    const dx = (vertices[2 * j] as number) - (vertices[2 * i] as number);
    const dy = (vertices[2 * j + 1] as number) - (vertices[2 * i + 1] as number);
    lengths[i] = Math.sqrt(dx * dx + dy * dy);
  }
  return lengths;
}

/** Evenly spaced points along a polyline: both ends of an open one, from the first vertex round a closed one. */
function samplePath(vertices: Float64Array, isClosed: boolean): Float64Array {
  const lengths = getEdgeLengths(vertices, isClosed);
  let total = 0;
  for (let i = 0; i < lengths.length; i += 1) total += lengths[i] as number;
  const step = total / (isClosed ? SAMPLE_COUNT : SAMPLE_COUNT - 1);
  const count = vertices.length / 2;
  const samples = new Float64Array(2 * SAMPLE_COUNT);
  let edge = 0;
  let before = 0;
  for (let k = 0; k < SAMPLE_COUNT; k += 1) {
    const along = k * step;
    while (edge < lengths.length - 1 && along >= before + (lengths[edge] as number)) {
      before += lengths[edge] as number;
      edge += 1;
    }
    const length = lengths[edge] as number;
    const t = length > 0 ? Math.min(1, Math.max(0, (along - before) / length)) : 0;
    const next = edge + 1 < count ? edge + 1 : 0;
    const x = vertices[2 * edge] as number;
    const y = vertices[2 * edge + 1] as number;
    samples[2 * k] = x + t * ((vertices[2 * next] as number) - x);
    samples[2 * k + 1] = y + t * ((vertices[2 * next + 1] as number) - y);
  }
  if (!isClosed) {
    samples[2 * SAMPLE_COUNT - 2] = vertices[2 * count - 2] as number;
    samples[2 * SAMPLE_COUNT - 1] = vertices[2 * count - 1] as number;
  }
  return samples;
}

function toVertices(shape: Shape): Float64Array {
  const points = listVertices(shape);
  const vertices = new Float64Array(2 * points.length);
  for (let i = 0; i < points.length; i += 1) {
    const point = points[i] as Point;
    vertices[2 * i] = point[0];
    vertices[2 * i + 1] = point[1];
  }
  return vertices;
}

/** Measures a shape. Every shape that the schema admits has a geometry, zero-length strokes and flat outlines too. */
export function measureShape(shape: Shape): MarkGeometry {
  const vertices = toVertices(shape);
  const samples = shape.kind === "dot" ? vertices : samplePath(vertices, shape.kind === "outline");
  let x = 0;
  let y = 0;
  for (let i = 0; i < samples.length; i += 2) {
    x += samples[i] as number;
    y += samples[i + 1] as number;
  }
  const centreX = x / (samples.length / 2);
  const centreY = y / (samples.length / 2);
  let reach2 = 0;
  for (let i = 0; i < vertices.length; i += 2) {
    const dx = (vertices[i] as number) - centreX;
    const dy = (vertices[i + 1] as number) - centreY;
    reach2 = Math.max(reach2, dx * dx + dy * dy);
  }
  const reach = Math.sqrt(reach2);
  const extent = Math.max(SMALLEST_EXTENT, 2 * findSmallestCircle(vertices).radius);
  return {
    kind: shape.kind,
    vertices,
    samples,
    centreX,
    centreY,
    reach,
    radius: Math.sqrt(centreX * centreX + centreY * centreY),
    angle: Math.atan2(centreY, centreX),
    extent,
    logExtent: Math.log(extent),
  };
}

function movePoints(points: Float64Array, { xx, xy, yx, yy, dx, dy }: Motion): Float64Array {
  const moved = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 2) {
    const x = points[i] as number;
    const y = points[i + 1] as number;
    moved[i] = xx * x + xy * y + dx;
    moved[i + 1] = yx * x + yy * y + dy;
  }
  return moved;
}

/** The same shape after a rigid motion: its size is kept, not measured again. */
export function moveGeometry(geometry: MarkGeometry, motion: Motion): MarkGeometry {
  const { centreX: x, centreY: y } = geometry;
  const vertices = movePoints(geometry.vertices, motion);
  const centreX = motion.xx * x + motion.xy * y + motion.dx;
  const centreY = motion.yx * x + motion.yy * y + motion.dy;
  return {
    kind: geometry.kind,
    vertices,
    samples: geometry.samples === geometry.vertices ? vertices : movePoints(geometry.samples, motion),
    centreX,
    centreY,
    reach: geometry.reach,
    radius: Math.sqrt(centreX * centreX + centreY * centreY),
    angle: Math.atan2(centreY, centreX),
    extent: geometry.extent,
    logExtent: geometry.logExtent,
  };
}
