import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { listMyNotes } from "@/lib/data/list-my-notes";
import { notePresence } from "@/lib/data/store/bench-presence";
import type { StudentNote } from "@/lib/plot/bench-note";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({ sittingId: z.string(), presence: z.enum(["here", "away", "gone"]) });

/**
 * Hears that a bench's page is open, hidden or left; kept in memory alone. The answer holds the bench's unseen notes,
 * for one whose stream does not come through. Throws AppError `not-found` for a sitting that is not the viewer's.
 */
export async function noteBench(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ notes: StudentNote[] }> {
  requireRole(viewer, "write-bench");
  const { sittingId, presence } = parseInput(InputSchema, input);
  const notes = await listMyNotes(viewer, sittingId);
  notePresence(sittingId, presence);
  return { notes };
}
