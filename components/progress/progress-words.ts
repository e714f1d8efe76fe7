/** A student's figures in kind words: what goes well first, and what to try next. */
import { toNumberWords, toPercent } from "@/components/charts/to-figure-words";
import { isDefined } from "@/lib/agreement/statistic";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { Cause } from "@/lib/plot/mark";
import type { ProgressView } from "@/lib/plot/progress-view";

/** What to try against strays of a cause. */
const TRY: Readonly<Record<Cause, string>> = {
  dust: "Wipe the stone once more before you draw a dot: dust moves, an inclusion stays.",
  echo: "Rock and tilt before you draw: an echo jumps to other facets, the inclusion itself does not.",
  glint: "Regrip the stone when something shines at the rim: the shine of metal moves with the tweezers.",
  double:
    "When you turn the stone over, ask of each feature whether you have drawn it from the other side already.",
  fragment: "Follow a long feature to its end before you draw it, then draw it in one go.",
  "other-view": "Draw a feature in the view in which you saw it first.",
  unexplained: "Look at each mark a second time, gripped another way, before you hand in.",
};

/** From so many of one cause on, something is said of it. */
const LEAST_STRAYS = 3;

/** The one thing to try next, from the most frequent cause; null where none stands out. */
export function findNextTry({ strays }: ProgressView): string | null {
  const [first] = Object.entries(strays).sort(([, a], [, b]) => b - a) as [Cause, number][];
  if (first === undefined || first[1] < LEAST_STRAYS) return null;
  return TRY[first[0]];
}

/** How the clarity grades lie, kindly. */
export function toKindBias({ bias }: ProgressView): string {
  if (!isDefined(bias)) return "Give a clarity grade with each plot, and this says how your grades lie.";
  if (bias.low <= 0 && bias.high >= 0) {
    return Math.abs(bias.value) < 0.25
      ? "Your grades lean neither way, as far as can be told."
      : "It is too early to tell whether your grades lean one way.";
  }
  const steps = toNumberWords(Math.abs(bias.value), 1);
  return bias.value > 0
    ? `You grade a little strictly: ${steps} steps on average. What would have to be smaller for the next better grade?`
    : `You grade a little kindly: ${steps} steps on average. Which mark decides the grade?`;
}

/** What is found well and what hides, among characteristics met often enough to say so. */
export function toFindingWords({ characteristics }: ProgressView): string {
  const met = characteristics.filter(({ reference }) => reference >= 3);
  if (met.length === 0)
    return "After a few more stones this says what you find well and what hides from you.";
  const sorted = [...met].sort((a, b) => b.found / b.reference - a.found / a.reference);
  const [best, worst] = [sorted[0], sorted.at(-1)];
  if (best === undefined || worst === undefined) return "";
  const name = ({ characteristic, found, reference }: (typeof met)[number]) =>
    `${toCharacteristicLabel(characteristic)} (${found} of ${reference})`;
  return best === worst
    ? `So far most of all: ${name(best)}.`
    : `You find ${name(best)} best. Look longer for ${name(worst)}.`;
}

/** A share over the weeks, kindly. */
export function toKindTrend(
  weeks: ProgressView["weeks"],
  key: "detection" | "withinOne",
  what: string,
): string {
  const known = weeks.flatMap((week) => (isDefined(week[key]) ? [week[key]] : []));
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined || !isDefined(first) || !isDefined(last))
    return `No figure yet: ${what}.`;
  if (first === last) return `${toPercent(last.value)} in your first week; the line grows with each debrief.`;
  if (first.high < last.low)
    return `Up from ${toPercent(first.value)} to ${toPercent(last.value)}: it shows.`;
  return `${toPercent(last.value)} lately. The bands overlap, so take single ups and downs lightly.`;
}
