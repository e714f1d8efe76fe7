import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { type StudentNote, StudentNotesSchema } from "@/lib/plot/bench-note";

/**
 * The notes to the viewer's own bench that it has not seen yet, oldest first. Throws AppError `not-found` for a sitting
 * that is not the viewer's.
 */
export async function listMyNotes(viewer: Viewer, sittingId: string): Promise<StudentNote[]> {
  requireRole(viewer, "read-bench");
  const sitting = await getDatabase().sitting.findUnique({
    where: { id: sittingId },
    select: {
      studentId: true,
      notes: { where: { seenAt: null }, orderBy: { sentAt: "asc" } },
    },
  });
  const own = sitting === null ? null : { ownerId: sitting.studentId, notes: sitting.notes };
  const { notes } = requireAccess(viewer, "read-bench", own);
  return StudentNotesSchema.parse({
    notes: notes.map(({ id, text, sentAt }) => ({ noteId: id, text, sentAt: sentAt.toISOString() })),
  }).notes;
}
