import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findExerciseStone } from "@/lib/data/store/find-exercise-stone";
import { findSitting } from "@/lib/data/store/find-sitting";
import { type PhotoView, PhotoViewSchema } from "@/lib/plot/stone-photo";

/** The photographs that the instructor shows of the stone of one's own sitting; most often none. */
export async function listShownPhotos(viewer: Viewer, sittingId: string): Promise<PhotoView[]> {
  requireRole(viewer, "read-bench");
  const database = getDatabase();
  const sitting = requireAccess(viewer, "read-bench", await findSitting(database, sittingId));
  const place = await findExerciseStone(database, sitting.row.exerciseStoneId);
  const { row } = requireAccess(viewer, "read-photo", place);
  return row.stone.photos.map(({ id, caption, widthPx, heightPx }) =>
    PhotoViewSchema.parse({ photoId: id, caption, widthPx, heightPx }),
  );
}
