import { CAUSE_LABELS } from "@/components/debrief/debrief-row";
import type { CalloutWords } from "@/components/debrief/to-callout-words";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { Ruling } from "@/lib/plot/overrule";
import type { DebriefView } from "@/lib/plot/student-view";

const PLACE_WORDS = { measured: "", half: ", half in place", full: ", in place" } as const;

/** A reference mark by its number on the diagram, where it has one that is not `ownNumber`. */
function nameReference({ reference }: DebriefView, say: CalloutWords, id: string, ownNumber: string): string {
  const mark = reference.marks.find((one) => one.id === id);
  if (mark === undefined) return "a mark the reference no longer has";
  const label = toCharacteristicLabel(mark.characteristic);
  const name = `${label} ${id}`;
  const said = say(name);
  return `the reference’s ${said === name || said === `${label} ${ownNumber}` ? label : said}`;
}

/** What a ruling says, by the numbers on the diagram: "Mark 3 is not the reference’s crystal 2". */
export function toRulingWords(view: DebriefView, say: CalloutWords, ruling: Ruling): string {
  const name = (mark: string) => say(`mark ${mark}`);
  const nameOther = (id: string, mark: string) =>
    nameReference(view, say, id, name(mark).replace("mark ", ""));
  switch (ruling.kind) {
    case "grade":
      return `${PROPERTY_LABELS[ruling.property]}: ${Math.round(ruling.credit * 1000) / 10}% of its worth`;
    case "cause": {
      const words =
        ruling.cause === null
          ? "not held against the plot"
          : `put down to ${CAUSE_LABELS[ruling.cause].toLowerCase()}`;
      return toSentence(`${name(ruling.mark)}: ${words}`);
    }
    case "together": {
      const { mark, reference, place } = ruling;
      return toSentence(`${name(mark)} is ${nameOther(reference, mark)}${PLACE_WORDS[place]}`);
    }
    case "apart":
      return toSentence(`${name(ruling.mark)} is not ${nameOther(ruling.reference, ruling.mark)}`);
  }
}

const toSentence = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
