/** Places said as people say them: a clock position and a share of the way from the centre to the girdle. */
import type { StoneFrame } from "@/lib/editor/stone-frame";
import { fromClockDeg, type Point, toClockDeg, type View } from "@/lib/gem/point";

/** Where a point is said to lie: degrees clockwise from 12 as the crown is seen, and 0 at the centre, 1 at the girdle. */
export interface ClockPlace {
  readonly clockDeg: number;
  readonly rimShare: number;
}

/** The point of a view at a clock position and a share of the way to the girdle. */
export function toPoint(frame: StoneFrame, view: View, { clockDeg, rimShare }: ClockPlace): Point {
  const perUnit = frame.getRimShare(view, fromClockDeg(view, clockDeg, 1));
  return perUnit === 0 ? [0, 0] : fromClockDeg(view, clockDeg, rimShare / perUnit);
}

/** The clock position of a point and its share of the way to the girdle. The centre is at 12 o'clock, share 0. */
export function toClockPlace(frame: StoneFrame, view: View, point: Point): ClockPlace {
  return { clockDeg: toClockDeg(view, point), rimShare: frame.getRimShare(view, point) };
}

/** A clock position as it is read, to the minute of a twelve-hour dial: 75 degrees is `2:30`, 0 is `12:00`. */
export function toClockText(clockDeg: number): string {
  const minutes = Math.round((((clockDeg % 360) + 360) % 360) * 2) % 720;
  const hour = Math.floor(minutes / 60);
  return `${hour === 0 ? 12 : hour}:${String(minutes % 60).padStart(2, "0")}`;
}

const CLOCK = /^\s*(\d{1,2})(?:\s*[:.h]\s*([0-5]?\d))?\s*$/;

/** Degrees for `2`, `2:30` or `12:15` on a twelve-hour dial (0 counts as 12); null for anything else. */
export function findClockDeg(text: string): number | null {
  const match = CLOCK.exec(text);
  if (match === null) return null;
  const hour = Number(match[1]);
  const minute = Number(match[2] ?? 0);
  return hour > 12 ? null : ((hour % 12) * 60 + minute) / 2;
}
