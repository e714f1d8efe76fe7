import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { listWatched } from "@/lib/data/store/list-watched";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { type Watch, WatchSchema } from "@/lib/plot/watch-view";

/**
 * The class now: every sitting on the bench, or handed in just now, of the sections that the viewer may watch. Nobody
 * on the bench gives no rows. Throws AppError `not-found` to a student.
 */
export async function listWatch(viewer: Viewer): Promise<Watch> {
  requireRole(viewer, "watch-benches");
  const section = whereSectionInScope(viewer, "watch-benches");
  const readAt = new Date().toISOString();
  const watched = await listWatched({ exerciseStone: { exercise: { section } } });
  return WatchSchema.parse({ readAt, rows: watched.map(({ row }) => row) });
}
