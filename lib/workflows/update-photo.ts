import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction } from "@/lib/data/store/database";
import { findPhoto } from "@/lib/data/store/find-photo";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { PhotoCaptionSchema } from "@/lib/plot/stone-photo";

const InputSchema = z.strictObject({
  photoId: z.string(),
  caption: PhotoCaptionSchema,
  isShown: z.boolean(),
});

/** Changes a photograph's caption and whether students see it. Throws AppError `not-allowed` or `not-found`. */
export async function updatePhoto(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "edit-tray");
  const { photoId, caption, isShown } = parseInput(InputSchema, input);
  await runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "edit-tray", await findPhoto(transaction, photoId));
    await transaction.stonePhoto.update({ where: { id: photoId }, data: { caption, isShown } });
    const action = row.isShown === isShown ? "update-photo" : isShown ? "show-photo" : "hide-photo";
    await writeTrail(transaction, viewer, { action, subjectKind: "stone", subjectId: row.stoneId });
  });
}
