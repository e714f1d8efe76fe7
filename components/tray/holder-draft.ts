/** To whom stones are about to be handed, as the fields hold it. Pure. */
import type { HandOutInput, HolderOption } from "@/lib/plot/hand-out";

export interface HolderDraft {
  readonly kind: "student" | "seat";
  readonly studentId: string | null;
  readonly seat: string;
  /** As a date field holds it, in the reader's own zone; empty for none. */
  readonly dueBack: string;
  readonly note: string;
}

export const EMPTY_HOLDER: HolderDraft = {
  kind: "student",
  studentId: null,
  seat: "",
  dueBack: "",
  note: "",
};

/** What is asked of the server, or null while nobody is named or the date is half typed. */
export function readHolderDraft(draft: HolderDraft): Omit<HandOutInput, "stoneIds"> | null {
  const dueBack = draft.dueBack === "" ? null : new Date(draft.dueBack);
  if (dueBack !== null && Number.isNaN(dueBack.getTime())) return null;
  const rest = { dueBackAt: dueBack?.toISOString() ?? null, note: draft.note };
  if (draft.kind === "seat") {
    const seat = draft.seat.trim();
    return seat === "" ? null : { to: { kind: "seat", seat }, ...rest };
  }
  if (draft.studentId === null) return null;
  return { to: { kind: "student", studentId: draft.studentId }, ...rest };
}

/** The name of whoever is chosen, for a button; null while nobody is. */
export function findHolderName(draft: HolderDraft, holders: readonly HolderOption[]): string | null {
  if (draft.kind === "seat") return draft.seat.trim() === "" ? null : draft.seat.trim();
  return holders.find(({ studentId }) => studentId === draft.studentId)?.name ?? null;
}
