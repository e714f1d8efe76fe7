import { advanceVec3, dotVec3, type Vec3 } from "@/lib/gem/vec3";

/** Diamond at the sodium line, rounded as the trade uses it (check-values.md 2.5). */
export const DIAMOND_INDEX = 2.417;

/**
 * Diamond's refractive index at a wavelength in micrometres, 0.226 to 0.760: Peter 1923, Z. Phys. 15, 358-368
 * (check-values.md 2.5).
 */
export function getDiamondIndex(wavelengthUm: number): number {
  const square = wavelengthUm * wavelengthUm;
  return Math.sqrt(1 + (0.3306 * square) / (square - 0.175 ** 2) + (4.3356 * square) / (square - 0.106 ** 2));
}

/** The critical angle in degrees inside a stone of this index in air: asin(1/n). 90 for an index of 1. */
export function getCriticalAngleDeg(refractiveIndex: number): number {
  return (Math.asin(1 / refractiveIndex) * 180) / Math.PI;
}

/**
 * The direction of light after it has entered the stone from air through a facet (Snell's law in vectors).
 * Both directions have unit length; `outward` is the facet's outward normal. Light along the surface or from
 * behind it (normal . direction >= 0) gives null.
 */
export function refractInward(direction: Vec3, outward: Vec3, refractiveIndex: number): Vec3 | null {
  const cosOutside = -dotVec3(direction, outward);
  if (cosOutside <= 0) return null;
  const ratio = 1 / refractiveIndex;
  const cosInside = Math.sqrt(1 - ratio * ratio * (1 - cosOutside * cosOutside));
  const along = ratio * cosOutside - cosInside;
  return [
    ratio * direction[0] + along * outward[0],
    ratio * direction[1] + along * outward[1],
    ratio * direction[2] + along * outward[2],
  ];
}

/** The direction after reflection at a plane with this unit normal. Its own inverse. */
export function reflectDirection(direction: Vec3, normal: Vec3): Vec3 {
  return advanceVec3(direction, normal, -2 * dotVec3(direction, normal));
}

/** The mirror image of a point in the plane normal . x = offset. Its own inverse. */
export function reflectPoint(point: Vec3, normal: Vec3, offset: number): Vec3 {
  return advanceVec3(point, normal, -2 * (dotVec3(point, normal) - offset));
}

/**
 * The share of unpolarised light that a facet reflects back into the stone (Fresnel), from the cosine of the
 * angle inside between the ray and the normal. 1 from the critical angle on: total reflection. At right angles
 * it is ((n - 1) / (n + 1))^2, 0.17197 for diamond (check-values.md 2.5).
 */
export function getReflectance(cosInside: number, refractiveIndex: number): number {
  const sinOutside2 = refractiveIndex * refractiveIndex * (1 - cosInside * cosInside);
  if (sinOutside2 >= 1) return 1;
  const cosOutside = Math.sqrt(1 - sinOutside2);
  const across = (refractiveIndex * cosInside - cosOutside) / (refractiveIndex * cosInside + cosOutside);
  const within = (cosInside - refractiveIndex * cosOutside) / (cosInside + refractiveIndex * cosOutside);
  return (across * across + within * within) / 2;
}
