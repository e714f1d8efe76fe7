/** How the engine's sentences name marks, places and lengths. */
import { toClockHour } from "@/lib/gem/locate-point";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { PlottedMark, ReferenceMark } from "@/lib/plot/mark";
import type { StoneBody } from "@/lib/plot/stone";

/** "crystal a"; the characteristic alone where the id says no more. */
export function nameReferenceMark({ characteristic, id }: ReferenceMark): string {
  const label = toCharacteristicLabel(characteristic);
  return id === characteristic || id === label ? label : `${label} ${id}`;
}

/** "mark m3" */
export function namePlottedMark({ id }: PlottedMark): string {
  return `mark ${id}`;
}

/** The girdle width in millimetres: a round's mean diameter, else the lesser of the two; null where not measured. */
export function getGirdleWidthMm({ cut, measurementsMm }: StoneBody): number | null {
  if (measurementsMm === undefined) return null;
  const [first, second] = measurementsMm;
  return cut === "round-brilliant" ? (first + second) / 2 : Math.min(first, second);
}

/** Whole numbers below a thousand, and as the digits after a point, written once: writing a number is slow. */
const WHOLE = Array.from({ length: 1000 }, (_, n) => String(n));
const TENTHS = Array.from({ length: 10 }, (_, n) => `.${n}`);
const DIGITS = {
  2: Array.from({ length: 100 }, (_, n) => `.${String(n).padStart(2, "0")}`),
  3: Array.from({ length: 1000 }, (_, n) => `.${String(n).padStart(3, "0")}`),
};

/**
 * A number of 0 or more below a thousand with so many decimals, as `toFixed` writes it. Where the nearest decimal is too
 * close to call, `toFixed` itself decides.
 */
export function nameFixed(value: number, decimals: 2 | 3): string {
  const unit = decimals === 2 ? 100 : 1000;
  const scaled = value * unit;
  const whole = Math.round(scaled);
  if (!(scaled >= 0 && whole < 1000 * unit) || Math.abs(scaled - whole) > 0.499999) {
    return value.toFixed(decimals);
  }
  const rest = whole % unit;
  return (WHOLE[(whole - rest) / unit] as string) + (DIGITS[decimals][rest] as string);
}

/** "0.012 girdle widths (0.06 mm)", without the millimetres where the stone was not measured. */
export function nameDistance(widths: number, widthMm: number | null): string {
  const text = `${nameFixed(widths, 3)} girdle widths`;
  return widthMm === null ? text : `${text} (${nameFixed(widths * widthMm, 2)} mm)`;
}

/** "on", or "0.012 girdle widths (0.06 mm) from": how a mark lies to a place. */
export function nameAway(widths: number, widthMm: number | null): string {
  return widths < 0.0005 ? "on" : `${nameDistance(widths, widthMm)} from`;
}

/** "4 o'clock" or "half past 1", the nearest half hour. */
export function nameClock(clockDeg: number): string {
  const halves = Math.round((((clockDeg % 360) + 360) % 360) / 15) % 24;
  const hour = toClockHour(30 * Math.floor(halves / 2));
  return halves % 2 === 0 ? `${hour} o'clock` : `half past ${hour}`;
}

/** "1 dot", "3 dots" */
export function nameCount(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** A number with at most two decimals, as it is read: 2.8, 70, 0.33. */
export function nameNumber(value: number): string {
  const hundredths = Math.round(value * 100);
  if (!(hundredths >= 0 && hundredths < 1e5)) return String(hundredths / 100 + 0);
  const rest = hundredths % 100;
  const whole = WHOLE[(hundredths - rest) / 100] as string;
  if (rest === 0) return whole;
  return whole + (rest % 10 === 0 ? (TENTHS[rest / 10] as string) : (DIGITS[2][rest] as string));
}

/** "a", "a and b", "a, b and c"; no items give an empty text. */
export function nameList(items: readonly string[]): string {
  if (items.length <= 1) return items[0] ?? "";
  return `${items.slice(0, -1).join(", ")} and ${items[items.length - 1]}`;
}
