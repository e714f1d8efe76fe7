import { z } from "zod";
import { refuseAsNotFound, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction } from "@/lib/data/store/database";
import { requireOwnSitting } from "@/lib/data/store/require-own-sitting";
import { announceSittings } from "@/lib/data/store/watch-bus";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({ sittingId: z.string(), noteId: z.string() });

/**
 * Keeps that a student's bench has shown a note; a second time changes nothing. The moment stands with the note, so it
 * is no entry of the trail. Throws AppError `not-found` for a sitting or a note that is not the viewer's.
 */
export async function seeNote(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ seenAt: string }> {
  requireRole(viewer, "write-bench");
  const { sittingId, noteId } = parseInput(InputSchema, input);
  const seenAt = await runInTransaction(async (transaction) => {
    await requireOwnSitting(transaction, viewer, sittingId);
    const note = await transaction.benchNote.findUnique({ where: { id: noteId, sittingId } });
    if (note === null) throw refuseAsNotFound();
    if (note.seenAt !== null) return note.seenAt;
    const now = new Date();
    await transaction.benchNote.update({ where: { id: noteId }, data: { seenAt: now } });
    return now;
  });
  announceSittings(sittingId);
  return { seenAt: seenAt.toISOString() };
}
