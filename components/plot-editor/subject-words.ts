import type { DrawnItem } from "@/components/plot-canvas/drawn-item";
import { type EditorMark, getSubject, type MarkSubject } from "@/lib/editor/drawn-mark";
import { type Characteristic, toCharacteristicLabel } from "@/lib/plot/characteristic";
import { CAUSES, type Cause } from "@/lib/plot/mark";
import type { MarkStyleName } from "@/lib/plot/notation";

/** The causes that a place on a stone can mislead by, in words. */
const CAUSE_WORDS: Readonly<Record<Cause, string>> = {
  dust: "dust that keeps coming back",
  echo: "echo of an inclusion",
  glint: "glint of metal",
  double: "seen from both sides",
  fragment: "piece of a larger feature",
  "other-view": "belongs to the other view",
  unexplained: "misleads, cause unknown",
};

/** Decoys that an instructor may set, the commonest first. */
export const DECOY_CAUSES: readonly Cause[] = ["echo", "glint", "dust", ...CAUSES].filter(
  (cause, index, all) => all.indexOf(cause) === index,
) as Cause[];

export type CharacteristicsByName = ReadonlyMap<string, Characteristic>;

/** A subject as it is read: "twinning wisp", "decoy: echo of an inclusion". */
export function toSubjectLabel(subject: MarkSubject, characteristics: CharacteristicsByName): string {
  return subject.kind === "decoy"
    ? `decoy: ${CAUSE_WORDS[subject.cause]}`
    : (characteristics.get(subject.name)?.label ?? toCharacteristicLabel(subject.name));
}

/** The style that a subject is drawn in. What the table does not know counts as inside. */
export function toStyleName(subject: MarkSubject, characteristics: CharacteristicsByName): MarkStyleName {
  return subject.kind === "decoy" ? "decoy" : (characteristics.get(subject.name)?.class ?? "inside");
}

const drawnItems = new WeakMap<EditorMark, { item: DrawnItem; characteristics: CharacteristicsByName }>();

/** A mark as it is drawn, with its number. The same object for the same mark and number. */
export function toDrawnItem(
  mark: EditorMark,
  number: number,
  characteristics: CharacteristicsByName,
): DrawnItem {
  const callout = String(number);
  const known = drawnItems.get(mark);
  if (known?.item.callout === callout && known.characteristics === characteristics) return known.item;
  const style = toStyleName(getSubject(mark), characteristics);
  const item: DrawnItem = { key: mark.id, shape: mark.shape, style, callout };
  drawnItems.set(mark, { item, characteristics });
  return item;
}

/** A key for a subject, unique among subjects. */
export function toSubjectKey(subject: MarkSubject): string {
  return subject.kind === "decoy" ? `decoy:${subject.cause}` : subject.name;
}
