/**
 * A point or a direction in the stone's frame: x and y as in the crown view, z up towards the viewer of the
 * crown, z = 0 at half the girdle's height. Unit: the stone's girdle width.
 */
export type Vec3 = readonly [x: number, y: number, z: number];

/** a + b. */
export function addVec3(a: Vec3, b: Vec3): Vec3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

/** a - b. */
export function subtractVec3(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** a times a number. */
export function scaleVec3(a: Vec3, by: number): Vec3 {
  return [a[0] * by, a[1] * by, a[2] * by];
}

/** The point `from + t * direction`. */
export function advanceVec3(from: Vec3, direction: Vec3, t: number): Vec3 {
  return [from[0] + direction[0] * t, from[1] + direction[1] * t, from[2] + direction[2] * t];
}

/** The scalar product. */
export function dotVec3(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** The vector product, right-handed. */
export function crossVec3(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** The length. */
export function getLengthVec3(a: Vec3): number {
  return Math.sqrt(dotVec3(a, a));
}

/** The unit vector along a; throws RangeError for a zero vector. */
export function toUnitVec3(a: Vec3): Vec3 {
  const length = getLengthVec3(a);
  if (!(length > 0)) throw new RangeError("toUnitVec3: a zero vector has no direction");
  return [a[0] / length, a[1] / length, a[2] / length];
}
