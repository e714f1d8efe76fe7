/** What a ruling may lay together, in the words and numbers of the diagram. Pure. */
import { type DebriefRow, listDebriefRows } from "@/components/debrief/debrief-row";
import type { DebriefView } from "@/lib/plot/student-view";

export interface Choice {
  readonly value: string;
  readonly label: string;
}

const toId = (key: string) => key.slice(key.indexOf(":") + 1);
const VIEW_WORDS = { crown: "crown", pavilion: "pavilion" } as const;

function toLabel({ callout, title, view, place, outcome }: DebriefRow): string {
  return `${callout} ${title}, ${VIEW_WORDS[view]}, ${place} (${outcome.replace("-", " ")})`;
}

/** Every plotted mark, in the order of its number. */
export function listMarkChoices(view: DebriefView): Choice[] {
  const rows = listDebriefRows(view).filter(({ outcome }) => outcome !== "overlooked");
  const byKey = new Map(rows.map((row) => [row.key, row]));
  return [...byKey.values()]
    .sort((a, b) => Number(a.callout) - Number(b.callout))
    .map((row) => ({ value: toId(row.key), label: toLabel(row) }));
}

/** Every reference mark but the row's own, those that were overlooked first. */
export function listReferenceChoices(view: DebriefView, own: DebriefRow): Choice[] {
  const rows = listDebriefRows(view);
  const overlooked = rows.filter(({ outcome }) => outcome === "overlooked");
  const choices = overlooked.map((row) => ({ value: toId(row.key), label: toLabel(row) }));
  const more = view.reference.marks.flatMap(({ id, characteristic }) => {
    if (choices.some(({ value }) => value === id) || own.partnerKey === `reference:${id}`) return [];
    const finder = rows.find(({ partnerKey }) => partnerKey === `reference:${id}`);
    const name = characteristic.replaceAll("-", " ");
    const words = finder === undefined ? "need not be plotted" : `now by mark ${finder.callout}`;
    return [{ value: id, label: `${name} (${words})` }];
  });
  return [...choices, ...more];
}
