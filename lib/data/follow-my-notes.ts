import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { listMyNotes } from "@/lib/data/list-my-notes";
import { listenForNotes } from "@/lib/data/store/note-bus";
import type { StudentNote } from "@/lib/plot/bench-note";

/**
 * Tells a student's own bench of its notes, at once and from now on, each time all that are unseen. Returns what ends it.
 * Throws AppError `not-found` for a sitting that is not the viewer's.
 */
export async function followMyNotes(
  viewer: Viewer,
  sittingId: string,
  tell: (notes: readonly StudentNote[]) => void,
): Promise<() => void> {
  requireRole(viewer, "read-bench");
  const tellAll = async () => tell(await listMyNotes(viewer, sittingId));
  const end = listenForNotes(sittingId, tellAll);
  try {
    await tellAll();
  } catch (thrown) {
    end();
    throw thrown;
  }
  return end;
}
