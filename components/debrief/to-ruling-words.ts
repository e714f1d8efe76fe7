import { CAUSE_LABELS } from "@/components/debrief/debrief-row";
import type { CalloutWords } from "@/components/debrief/to-callout-words";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { Ruling } from "@/lib/plot/overrule";
import type { DebriefView } from "@/lib/plot/student-view";

const PLACE_WORDS = { measured: "", half: ", half in place", full: ", in place" } as const;

/** The engine's name of a reference mark, which `say` turns into its number. */
function nameReference({ reference }: DebriefView, id: string): string {
  const mark = reference.marks.find((one) => one.id === id);
  return mark === undefined
    ? "a mark the reference no longer has"
    : `${toCharacteristicLabel(mark.characteristic)} ${id}`;
}

/** What a ruling says, by the numbers on the diagram: "Mark 3 is not crystal 2". */
export function toRulingWords(view: DebriefView, say: CalloutWords, ruling: Ruling): string {
  switch (ruling.kind) {
    case "grade":
      return `${PROPERTY_LABELS[ruling.property]}: ${Math.round(ruling.credit * 1000) / 10}% of its worth`;
    case "cause": {
      const words =
        ruling.cause === null
          ? "not held against the plot"
          : `put down to ${CAUSE_LABELS[ruling.cause].toLowerCase()}`;
      return toSentence(say(`mark ${ruling.mark}: ${words}`));
    }
    case "together": {
      const words = `mark ${ruling.mark} is ${nameReference(view, ruling.reference)}`;
      return toSentence(say(words) + PLACE_WORDS[ruling.place]);
    }
    case "apart":
      return toSentence(say(`mark ${ruling.mark} is not ${nameReference(view, ruling.reference)}`));
  }
}

const toSentence = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
