import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction } from "@/lib/data/store/database";
import { findPhoto } from "@/lib/data/store/find-photo";
import { removePhotoFiles } from "@/lib/data/store/photo-files";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({ photoId: z.string() });

/**
 * Deletes a photograph for good: its row, then its files, so that a file may be left over but never a row without one.
 * Throws AppError `not-allowed` or `not-found`.
 */
export async function deletePhoto(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "edit-tray");
  const { photoId } = parseInput(InputSchema, input);
  const file = await runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "edit-tray", await findPhoto(transaction, photoId));
    await transaction.stonePhoto.delete({ where: { id: photoId } });
    await writeTrail(transaction, viewer, {
      action: "delete-photo",
      subjectKind: "stone",
      subjectId: row.stoneId,
    });
    return row.file;
  });
  await removePhotoFiles(file);
}
