/** A verdict of the hand-in check in sentences. Pure. */
import type { StatusTone } from "@/components/ui/status-badge";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { StoneVerdict, TellingFeature } from "@/lib/plot/stone-check";

export interface VerdictWords {
  readonly tone: StatusTone;
  readonly title: string;
  readonly detail: string;
}

const percent = (share: number) => `${Math.round(share * 100)} %`;

function toCertaintyWords({ certainty, ranks, margin }: StoneVerdict): string {
  const [first, second] = ranks;
  if (first === undefined) return "No stone of this cut in the tray has a reference.";
  if (second === undefined) return `${first.label} is the only stone of this cut with a reference.`;
  const ahead = `${first.label} fits ${percent(first.fit)}, ${second.label} ${percent(second.fit)}`;
  if (certainty === "clear") return `${ahead}: ${percent(margin)} ahead, which is clear.`;
  if (certainty === "likely") return `${ahead}: ahead, but not clear of it.`;
  return `${ahead}: that does not tell them apart.`;
}

/** What it says of the label; where none was given, which stone it is. */
export function toVerdictWords(verdict: StoneVerdict, label: string | null): VerdictWords {
  const [first] = verdict.ranks;
  const detail = toCertaintyWords(verdict);
  if (first === undefined) return { tone: "idle", title: "Nothing to compare with", detail };
  if (label === null || verdict.outcome === null) {
    if (verdict.certainty === "open") return { tone: "idle", title: "It cannot be told yet", detail };
    const title = verdict.certainty === "clear" ? `This is ${first.label}` : `Most likely ${first.label}`;
    return { tone: verdict.certainty === "clear" ? "ready" : "active", title, detail };
  }
  switch (verdict.outcome) {
    case "fits":
      return { tone: "ready", title: `It fits its label, ${label}`, detail };
    case "other":
      return {
        tone: "bad",
        title:
          first.label === label
            ? `Its weight is not ${label}’s`
            : `Not ${label}: it fits ${first.label} better`,
        detail,
      };
    case "none":
      return { tone: "bad", title: "It fits no stone of this tray", detail };
    case "unsure":
      return { tone: "idle", title: `Not enough to say whether it is ${label}`, detail };
  }
}

/** "A feather in the crown view, bezel facet near 4 o'clock: A-03 has it, A-04 has nothing there." */
export function toTellingWords({ label, lackedBy, view, characteristic, place }: TellingFeature): string {
  return `${toCharacteristicLabel(characteristic)} in the ${view} view, ${place}: ${label} has it, ${lackedBy} has nothing near.`;
}
