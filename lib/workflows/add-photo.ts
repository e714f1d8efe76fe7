import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { getDatabase, runInTransaction } from "@/lib/data/store/database";
import { findStone } from "@/lib/data/store/find-stone";
import { removePhotoFiles, writePhotoFiles } from "@/lib/data/store/photo-files";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { MOST_PHOTOS } from "@/lib/plot/stone-photo";
import { encodePhoto } from "@/lib/workflows/photo/encode-photo";

const InputSchema = z.strictObject({ stoneId: z.string(), bytes: z.instanceof(Uint8Array) });

/**
 * Adds a photograph at the end of a stone's strip, hidden from students. The files are written first, so that no row
 * ever names a file that is not there. Throws AppError `not-allowed`, `not-found`, `bad-input` for what is no
 * photograph, or `conflict` where the stone has as many as it may.
 */
export async function addPhoto(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ photoId: string }> {
  requireRole(viewer, "edit-tray");
  const { stoneId, bytes } = parseInput(InputSchema, input);
  // Asked before the decoder runs: it is dear, and not for everybody.
  requireAccess(viewer, "edit-tray", await findStone(getDatabase(), stoneId));
  const { pictures, widthPx, heightPx } = await encodePhoto(bytes);
  const file = await writePhotoFiles(pictures);
  try {
    return await runInTransaction(async (transaction) => {
      requireAccess(viewer, "edit-tray", await findStone(transaction, stoneId));
      const others = await transaction.stonePhoto.findMany({
        where: { stoneId },
        select: { position: true },
      });
      if (others.length >= MOST_PHOTOS) {
        throw new AppError("conflict", `A stone may have ${MOST_PHOTOS} photographs; delete one first.`);
      }
      const position = Math.max(0, ...others.map((other) => other.position)) + 1;
      const photo = await transaction.stonePhoto.create({
        data: { stoneId, position, file, widthPx, heightPx, addedById: viewer.userId },
      });
      await writeTrail(transaction, viewer, {
        action: "add-photo",
        subjectKind: "stone",
        subjectId: stoneId,
      });
      return { photoId: photo.id };
    });
  } catch (thrown) {
    await removePhotoFiles(file);
    throw thrown;
  }
}
