/** Statistics as they are read: in words, with their interval, or with the reason why there is none. */
import { isDefined, type Statistic } from "@/lib/agreement/statistic";

/** `0.683` as `68 %`. */
export function toPercent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** A number with so many decimals and a true minus sign. */
export function toNumberWords(value: number, decimals = 2): string {
  const text = Math.abs(value).toFixed(decimals);
  return Number(text) !== 0 && value < 0 ? `−${text}` : text;
}

/** `68 % (52 % to 81 %)`, or the reason why there is no number. */
export function toStatisticWords(
  statistic: Statistic,
  format: (value: number) => string = toPercent,
): string {
  if (!isDefined(statistic)) return `not known: ${statistic.undefined}`;
  return `${format(statistic.value)} (${format(statistic.low)} to ${format(statistic.high)})`;
}

/** Value, low and high for a row of a table behind a chart, rounded; empty cells and the reason where undefined. */
export function toStatisticCells(statistic: Statistic, decimals = 4) {
  const round = (value: number) => Number(value.toFixed(decimals));
  return isDefined(statistic)
    ? [round(statistic.value), round(statistic.low), round(statistic.high), ""]
    : [null, null, null, statistic.undefined];
}

/** Heads of the cells that `toStatisticCells` gives. */
export const STATISTIC_HEADS = ["Value", "Low (95 %)", "High (95 %)", "Why there is no value"] as const;

/** A bias in steps of a scale listed best first, in words: `half a step harsh`. */
export function toBiasWords(bias: Statistic): string {
  if (!isDefined(bias)) return `not known: ${bias.undefined}`;
  const size = Math.abs(bias.value);
  const side = bias.value > 0 ? "harsh" : "lenient";
  if (bias.low <= 0 && bias.high >= 0 && size < 0.25) return "neither harsh nor lenient";
  if (size < 0.05) return `barely ${side}`;
  const quarter = Math.round(size * 4) / 4;
  const words: Readonly<Record<number, string>> = {
    0: "less than a quarter of a step",
    0.25: "a quarter of a step",
    0.5: "half a step",
    0.75: "three quarters of a step",
    1: "one step",
  };
  const amount = words[quarter] ?? `${toNumberWords(size, 1)} steps`;
  const isUnsure = bias.low <= 0 && bias.high >= 0;
  return `${amount} ${side}${isUnsure ? ", which may be chance" : ""}`;
}
