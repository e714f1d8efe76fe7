/**
 * The engine names marks by their ids; a debrief names them by the numbers that stand on the diagram. Pure.
 */
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { PlottedMark } from "@/lib/plot/mark";
import type { Reference } from "@/lib/plot/stone";

export type CalloutWords = (text: string) => string;

const escapePattern = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/**
 * A rewriter of sentences: "mark m3" becomes "mark 3", and "crystal a" becomes "crystal 3", after the mark that found
 * it or the number at which it was overlooked; "crystal" alone where it has no number. "decoy d1" becomes "a decoy": it has
 * no number on the diagram. Text without such names is left as it is.
 */
export function createCalloutWords(
  marks: readonly PlottedMark[],
  { marks: reference, decoys }: Pick<Reference, "marks" | "decoys">,
  findCallout: (side: "plotted" | "reference", id: string) => string | null,
): CalloutWords {
  const names = new Map<string, string>();
  for (const { id } of marks) names.set(`mark ${id}`, `mark ${findCallout("plotted", id) ?? id}`);
  for (const { id, characteristic } of reference) {
    const label = toCharacteristicLabel(characteristic);
    if (id === characteristic || id === label) continue;
    const callout = findCallout("reference", id);
    names.set(`${label} ${id}`, callout === null ? label : `${label} ${callout}`);
  }
  for (const { id } of decoys) names.set(`decoy ${id}`, "a decoy");
  if (names.size === 0) return (text) => text;
  const longestFirst = [...names.keys()].sort((a, b) => b.length - a.length).map(escapePattern);
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}-])(?:${longestFirst.join("|")})(?![\\p{L}\\p{N}_-])`, "gu");
  return (text) => text.replace(pattern, (name) => names.get(name) ?? name);
}
