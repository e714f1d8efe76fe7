/** The program's report in words. Pure. */
import { toPercent, toStatisticWords } from "@/components/charts/to-figure-words";
import { placeInFunnel } from "@/lib/agreement/funnel-limits";
import type { ProgramGroup, ProgramMeasure, ProgramReport } from "@/lib/agreement/program-report";
import { isDefined } from "@/lib/agreement/statistic";

interface MeasureWords {
  readonly title: string;
  /** What is counted, and of what: heads of tables and axes. */
  readonly hits: string;
  readonly trials: string;
}

export const MEASURE_WORDS: Readonly<Record<ProgramMeasure, MeasureWords>> = {
  found: { title: "Reference marks found", hits: "Marks found", trials: "Reference marks seen" },
  exact: { title: "Clarity exact", hits: "Exact grades", trials: "Clarity grades" },
  "within-one": { title: "Clarity within one step", hits: "Within one step", trials: "Clarity grades" },
};

const listNames = (groups: readonly ProgramGroup[]) => {
  const names = groups.map(({ label }) => label);
  return names.length <= 4
    ? names.join(", ")
    : `${names.slice(0, 4).join(", ")} and ${names.length - 4} more`;
};

/** Which sections lie outside the funnel, and how many would by chance alone. */
export function toFunnelWords(report: ProgramReport, measure: ProgramMeasure): string {
  const { sections, whole, designEffects } = report;
  const { hits, trials, share } = whole.shares[measure];
  const used = sections.filter((section) => section.shares[measure].trials > 0);
  if (trials === 0 || used.length === 0) return "Nothing was handed in and scored yet.";
  const common = `The program: ${toStatisticWords(share)}.`;
  if (used.length < 3) return `${common} With fewer than three sections there is no spread to judge by.`;
  const place = (section: ProgramGroup) => {
    const own = section.shares[measure];
    return placeInFunnel(own.hits, own.trials, hits / trials, designEffects[measure]);
  };
  const below = used.filter((section) => place(section) === "below");
  const above = used.filter((section) => place(section) === "above");
  const byChance = Math.round(used.length * 0.05);
  const chance = byChance === 0 ? "none" : byChance === 1 ? "one" : String(byChance);
  if (below.length + above.length === 0) {
    return `${common} No section lies outside what chance explains: they are not to be ranked.`;
  }
  const parts = [
    below.length > 0 ? `below: ${listNames(below)}` : "",
    above.length > 0 ? `above: ${listNames(above)}` : "",
  ].filter(Boolean);
  return `${common} Outside what chance explains, ${parts.join("; ")}. Of ${used.length} sections, ${chance} would be by chance alone.`;
}

/** How alike groups are, in a sentence: whether any two intervals keep apart. */
export function toSpreadWords(groups: readonly ProgramGroup[], measure: ProgramMeasure): string {
  const known = groups.flatMap(({ label, shares }) => {
    const { share } = shares[measure];
    return isDefined(share) ? [{ label, share }] : [];
  });
  const [first] = known;
  if (first === undefined) return "Nothing was handed in and scored yet.";
  if (known.length === 1) return `Only ${first.label} has figures: nothing to hold it against.`;
  const ordered = known.toSorted((a, b) => a.share.value - b.share.value);
  const [least = first, most = first] = [ordered[0], ordered.at(-1)];
  const span = `From ${toPercent(least.share.value)} (${least.label}) to ${toPercent(most.share.value)} (${most.label}).`;
  return least.share.high < most.share.low
    ? `${span} The intervals of these two keep apart.`
    : `${span} All intervals overlap, so the order may be chance.`;
}
