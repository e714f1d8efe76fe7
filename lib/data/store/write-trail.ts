import type { Viewer } from "@/lib/access/viewer";
import type { Transaction } from "@/lib/data/store/database";

/** What was done to what. `detail` never holds a mark, a decoy, a grade or a password. */
export interface TrailNote {
  readonly action: string;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly detail?: string;
}

/** Adds to the trail, in the transaction of what it tells of. No actor: the program itself. */
export async function writeTrail(
  transaction: Transaction,
  actor: Pick<Viewer, "userId" | "name"> | null,
  ...notes: readonly TrailNote[]
): Promise<void> {
  await transaction.trailEntry.createMany({
    data: notes.map((note) => ({
      actorId: actor?.userId ?? null,
      actorName: actor?.name ?? "Loupework",
      action: note.action,
      subjectKind: note.subjectKind,
      subjectId: note.subjectId,
      detail: note.detail ?? "",
    })),
  });
}
