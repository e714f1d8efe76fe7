/** The findings of a section's charts in sentences: what a reader who sees no picture must know. */
import { toNumberWords, toPercent } from "@/components/charts/to-figure-words";
import type { ConfusionTable } from "@/lib/agreement/confusion-table";
import type { ConfidencePoint, Rates } from "@/lib/agreement/derive-rates";
import type { GradeRates } from "@/lib/agreement/grade-agreement";
import { isDefined, type Statistic } from "@/lib/agreement/statistic";
import { sumTally } from "@/lib/agreement/tally";
import { CAUSES } from "@/lib/plot/mark";

/** Each cause of a stray as a head of a strip or a row. */
export const CAUSE_LABELS: readonly (readonly [cause: string, label: string])[] = CAUSES.map((cause) => [
  cause,
  cause === "other-view" ? "other view" : cause,
]);

const TWO = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", timeZone: "UTC" });

/** `2026-11-23` as `23 Nov`. */
export function toWeekLabel(week: string): string {
  return TWO.format(new Date(`${week}T00:00:00Z`));
}

interface OffCell {
  readonly row: string;
  readonly column: string;
  readonly count: number;
}

/** The largest cell off the diagonal; null where all of them are 0. */
export function findLargestMixUp(
  { rows, columns, counts }: ConfusionTable,
  leftOut?: string,
): OffCell | null {
  let best: OffCell | null = null;
  for (const [i, row] of rows.entries()) {
    for (const [j, column] of columns.entries()) {
      const count = counts[i]?.[j] ?? 0;
      if (row === column || column === leftOut || count === 0) continue;
      if (best === null || count > best.count) best = { row, column, count };
    }
  }
  return best;
}

/** What grades were taken for one another. */
export function toGradeMixUpWords(clarity: GradeRates | undefined): string {
  if (clarity === undefined || clarity.graded === 0) return "No clarity grade was given yet.";
  const mixUp = findLargestMixUp(clarity.confusion);
  const exact = isDefined(clarity.exact) ? Math.round(clarity.exact.value * clarity.graded) : 0;
  const agreed = `${exact} of ${clarity.graded} clarity grades are the reference's.`;
  if (mixUp === null) return agreed;
  return `${agreed} Most often another: ${mixUp.row} was graded ${mixUp.column}, ${times(mixUp.count)}.`;
}

const times = (count: number) => (count === 1 ? "once" : count === 2 ? "twice" : `${count} times`);

/** What characteristics were called. */
export function toCharacteristicMixUpWords(
  confusion: ConfusionTable,
  toLabel: (name: string) => string,
  isMatrixShown = true,
): string {
  if (confusion.rows.length === 0) return "No reference mark was there to be found.";
  const mixUp = findLargestMixUp(confusion, confusion.columns.at(-1));
  if (mixUp === null) return "Whatever was found was also called by its own name.";
  const mistaken = `Most often mistaken: ${toLabel(mixUp.row)} was called ${toLabel(mixUp.column)}, ${times(mixUp.count)}.`;
  return isMatrixShown ? `${mistaken} The last column counts what was overlooked.` : mistaken;
}

/** Best and worst found, among those with a value. */
export function toDetectionWords(
  rows: readonly { readonly label: string; readonly statistic: Statistic }[],
): string {
  const known = rows.flatMap(({ label, statistic }) =>
    isDefined(statistic) ? [{ label, ...statistic }] : [],
  );
  const sorted = known.sort((a, b) => a.value - b.value);
  const [worst, best] = [sorted[0], sorted.at(-1)];
  if (worst === undefined || best === undefined) return "No share can be told yet; each row says why.";
  if (worst === best) return `${worst.label}: ${toPercent(worst.value)} found.`;
  const isApart = worst.high < best.low;
  return `Found least: ${worst.label}, ${toPercent(worst.value)}; most: ${best.label}, ${toPercent(best.value)}.${isApart ? "" : " Their intervals overlap, so the order may be chance."}`;
}

/** The most frequent causes. */
export function toStrayWords({ strays, plots, straysPerPlot }: Rates): string {
  const total = sumTally(strays);
  if (plots === 0) return "Nothing was handed in yet.";
  if (total === 0) return `No stray in ${plots} plots.`;
  const [first, second] = Object.entries(strays).sort(([, a], [, b]) => b - a);
  const toShare = ([cause, count]: [string, number]) => `${cause} ${toPercent(count / total)}`;
  const rate = isDefined(straysPerPlot) ? toNumberWords(straysPerPlot.value, 1) : "";
  return `${rate} strays on a stone; of ${total}, ${[first, second].flatMap((one) => (one ? [toShare(one)] : [])).join(", ")}.`;
}

/** What lowering the bar of confidence brings and costs. */
export function toFreeResponseWords(points: readonly ConfidencePoint[]): string {
  const [sure, all] = [points[0], points.at(-1)];
  if (!sure || !all || sure.foundShare === null || all.foundShare === null || sure.straysPerPlot === null) {
    return "Each point counts the marks of that confidence or more.";
  }
  if (sure.foundShare === all.foundShare && sure.straysPerPlot === all.straysPerPlot) {
    return "All marks were given the same confidence, so the curve has one point.";
  }
  return `Of sure marks alone (5): ${toPercent(sure.foundShare)} found with ${toNumberWords(sure.straysPerPlot, 1)} strays on a stone. Of all marks: ${toPercent(all.foundShare)} with ${toNumberWords(all.straysPerPlot ?? 0, 1)}. Marks without confidence count as 1.`;
}

/** First and last week with a value. */
export function toTrendWords(
  points: readonly { readonly label: string; readonly statistic: Statistic }[],
): string {
  const known = points.flatMap(({ label, statistic }) =>
    isDefined(statistic) ? [{ label, ...statistic }] : [],
  );
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined) return "No week has a figure yet.";
  if (first === last) return `One week only, from ${first.label}: ${toPercent(first.value)}.`;
  const change = last.value - first.value;
  const isApart = first.high < last.low || last.high < first.low;
  const verdict = isApart
    ? change > 0
      ? "better than"
      : "worse than"
    : "no different, as far as the data tell, from";
  return `The week of ${last.label}, ${toPercent(last.value)}, is ${verdict} that of ${first.label}, ${toPercent(first.value)}.`;
}
