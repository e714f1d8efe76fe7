/** Clock positions as they are typed: "1:30, 4:30" or "45°, 135". Pure. */

const CLOCK = /^(\d{1,2}):(\d{2})$/;
const DEGREES = /^(-?\d+(?:\.\d+)?)\s*(?:°|deg)?$/;

/** Degrees clockwise from 12 of one position, or null when it is neither a clock time nor degrees within a turn. */
function readOne(word: string): number | null {
  const clock = CLOCK.exec(word);
  if (clock !== null) {
    const hours = Number(clock[1]);
    const minutes = Number(clock[2]);
    if (hours < 1 || hours > 12 || minutes > 59) return null;
    return (hours % 12) * 30 + minutes / 2;
  }
  const degrees = DEGREES.exec(word);
  if (degrees === null) return null;
  const deg = Number(degrees[1]);
  return deg >= 0 && deg < 360 ? deg : null;
}

export interface ClockList {
  /** Degrees clockwise from 12 as the crown is seen. */
  readonly clockDegs: readonly number[];
  /** The words that are no position. */
  readonly unread: readonly string[];
}

/** Reads positions parted by commas, semicolons or blanks. An empty text gives an empty list. */
export function readClockList(text: string): ClockList {
  const words = text
    .replaceAll(/\s+(?=°|deg)/g, "")
    .split(/[\s,;]+/)
    .filter(Boolean);
  const clockDegs: number[] = [];
  const unread: string[] = [];
  for (const word of words) {
    const deg = readOne(word);
    if (deg === null) unread.push(word);
    else clockDegs.push(deg);
  }
  return { clockDegs, unread };
}

/** One position as it is typed: "1:30" where it falls on a whole minute, otherwise degrees. */
export function toClockText(clockDeg: number): string {
  const turned = Math.round((((clockDeg % 360) + 360) % 360) * 1e6) / 1e6;
  const minutes = turned * 2;
  if (!Number.isInteger(minutes)) return `${turned}°`;
  const hours = Math.floor(minutes / 60);
  return `${hours === 0 ? 12 : hours}:${String(minutes % 60).padStart(2, "0")}`;
}
