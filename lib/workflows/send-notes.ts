import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction } from "@/lib/data/store/database";
import { findSitting } from "@/lib/data/store/find-sitting";
import { announceNotes } from "@/lib/data/store/note-bus";
import { announceSittings } from "@/lib/data/store/watch-bus";
import { writeTrail } from "@/lib/data/store/write-trail";
import { MOST_BENCHES, NoteTextSchema } from "@/lib/plot/bench-note";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({
  sittingIds: z.array(z.string()).min(1).max(MOST_BENCHES),
  text: NoteTextSchema,
});

/**
 * Sends a short note to benches. All or none; a bench that was handed in meanwhile is left out and counted. Throws
 * AppError `not-allowed`, `not-found`, or `bad-input` for an empty or too long text.
 */
export async function sendNotes(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ sent: number; handedIn: number }> {
  requireRole(viewer, "send-note");
  const { sittingIds, text } = parseInput(InputSchema, input);
  const wanted = [...new Set(sittingIds)];
  const open = await runInTransaction(async (transaction) => {
    const fresh: string[] = [];
    for (const sittingId of wanted) {
      const { row } = requireAccess(viewer, "send-note", await findSitting(transaction, sittingId));
      if (row.handIn === null) fresh.push(sittingId);
    }
    const sentAt = new Date();
    await transaction.benchNote.createMany({
      data: fresh.map((sittingId) => ({ sittingId, authorId: viewer.userId, text, sentAt })),
    });
    const notes = fresh.map((subjectId) => ({ action: "send-note", subjectKind: "sitting", subjectId }));
    await writeTrail(transaction, viewer, ...notes);
    return fresh;
  });
  announceNotes(open);
  announceSittings(...open);
  return { sent: open.length, handedIn: wanted.length - open.length };
}
