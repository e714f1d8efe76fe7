import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { findStone } from "@/lib/data/store/find-stone";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { MOST_PHOTOS } from "@/lib/plot/stone-photo";

const InputSchema = z.strictObject({
  stoneId: z.string(),
  photoIds: z.array(z.string()).max(MOST_PHOTOS),
});

/**
 * Puts a stone's photographs in order. Throws AppError `not-allowed`, `not-found`, or `conflict` where the list is not
 * exactly what the stone has: somebody else added or deleted one meanwhile.
 */
export async function orderPhotos(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "edit-tray");
  const { stoneId, photoIds } = parseInput(InputSchema, input);
  await runInTransaction(async (transaction) => {
    requireAccess(viewer, "edit-tray", await findStone(transaction, stoneId));
    const known = await transaction.stonePhoto.findMany({ where: { stoneId }, select: { id: true } });
    const isSame =
      known.length === photoIds.length &&
      new Set(photoIds).size === photoIds.length &&
      known.every(({ id }) => photoIds.includes(id));
    if (!isSame) {
      throw new AppError(
        "conflict",
        "The photographs of this stone changed meanwhile; the order is as it was.",
      );
    }
    for (const [index, id] of photoIds.entries()) {
      await transaction.stonePhoto.update({ where: { id }, data: { position: index + 1 } });
    }
    await writeTrail(transaction, viewer, {
      action: "order-photos",
      subjectKind: "stone",
      subjectId: stoneId,
    });
  });
}
