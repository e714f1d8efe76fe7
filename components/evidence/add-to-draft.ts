/** A suggested place as work on the reference that is not saved yet. Pure. */
import { getDecoyCause } from "@/components/evidence/suggestion-words";
import type { ReferenceDraft } from "@/components/stone/reference-draft";
import type { Proposal, Suggestion } from "@/lib/agreement/stone-evidence";

/** The first of `name`, `name-2`, … that no mark or decoy bears. */
function findFreeId({ marks, decoys }: ReferenceDraft, name: string): string {
  const taken = new Set([...marks, ...decoys].map(({ id }) => id));
  let id = name;
  for (let n = 2; taken.has(id); n += 1) id = `${name}-${n}`;
  return id;
}

const NOTES: Readonly<Record<Proposal, string>> = {
  decoy: "a decoy where",
  missed: "a feature that",
  damage: "fresh damage that",
};

/** The draft with the place added as what it was taken for, and a note that says on what evidence. */
export function addToDraft(draft: ReferenceDraft, suggestion: Suggestion, as: Proposal): ReferenceDraft {
  const { view, shape, students, of, firstSeenAt } = suggestion;
  const since = as === "damage" ? `, seen since ${firstSeenAt.slice(0, 10)}` : "";
  const note = [draft.note, `Added ${NOTES[as]} ${students} of ${of} students mark${since}.`]
    .filter((part) => part !== "")
    .join(" ")
    .slice(0, 1000);
  const id = findFreeId(draft, as === "decoy" ? "students-decoy" : "students-mark");
  if (as === "decoy") {
    return {
      ...draft,
      note,
      decoys: [...draft.decoys, { id, view, shape, cause: getDecoyCause(suggestion) }],
    };
  }
  const characteristic = suggestion.characteristics[0]?.name ?? "crystal";
  return { ...draft, note, marks: [...draft.marks, { id, view, shape, characteristic }] };
}
