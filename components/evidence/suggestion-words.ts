/** A suggested place in words. Pure. */
import { toNumberWords, toPercent, toStatisticWords } from "@/components/charts/to-figure-words";
import type { NameCount, Proposal, Suggestion } from "@/lib/agreement/stone-evidence";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { Cause } from "@/lib/plot/mark";

export const PROPOSAL_WORDS: Readonly<Record<Proposal, { readonly title: string; readonly act: string }>> = {
  decoy: { title: "May be a place that misleads", act: "Add a decoy" },
  missed: { title: "May be a feature that the reference lacks", act: "Add the feature" },
  damage: { title: "May be fresh damage", act: "Add the damage" },
};

const listNames = (names: readonly NameCount[]) =>
  names
    .slice(0, 3)
    .map(({ name, students }) => `${toCharacteristicLabel(name)} (${students})`)
    .join(", ");

const toDay = (iso: string) => iso.slice(0, 10);

/** `4 in 1,000`, or fewer than one in so many. */
function toChanceWords(chance: number): string {
  return chance < 0.001 ? "less than 1 in 1,000" : `about ${Math.max(1, Math.round(chance * 1000))} in 1,000`;
}

/** The evidence, a sentence each. */
export function listEvidenceWords(suggestion: Suggestion): string[] {
  const { students, of, share, expected, chance, spread, before, lateChance } = suggestion;
  const words = [
    `${students} of ${of} students mark it: ${toStatisticWords(share)}. Strewn at random, ${toNumberWords(expected, 1)} would; a pile like this anywhere on the stone: ${toChanceWords(chance)} by chance.`,
    `Called ${listNames(suggestion.characteristics)}; the engine’s causes: ${listNames(suggestion.causes)}.`,
    `The marks lie ${spread.toFixed(3)} girdle widths from the middle (root mean square), first on ${toDay(suggestion.firstSeenAt)}, last on ${toDay(suggestion.lastSeenAt)}.`,
  ];
  if (suggestion.proposes === "damage") {
    words.push(
      `None of the ${before} students who handed in before ${toDay(suggestion.firstSeenAt)} marked it. If the stone had not changed, so late a start would come ${toChanceWords(lateChance)} times.`,
    );
  } else if (suggestion.proposes === "decoy") {
    const [cause] = suggestion.causes;
    if (cause !== undefined)
      words.push(`${toPercent(cause.students / students)} of them are strays of one cause: ${cause.name}.`);
  }
  return words;
}

/** The cause that a decoy of it would have: the most given one. */
export function getDecoyCause({ causes }: Suggestion): Cause {
  return causes[0]?.name ?? "unexplained";
}
