import { refuseAsNotFound, requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findPhoto } from "@/lib/data/store/find-photo";
import { readPhotoFile } from "@/lib/data/store/photo-files";
import type { PhotoSize } from "@/lib/plot/stone-photo";

/**
 * The JPEG of a photograph: for staff; for a student only where it is marked as shown and its stone is set for them.
 * Throws AppError `not-found`, also where the file is gone.
 */
export async function getPhotoFile(
  viewer: Viewer,
  photoId: string,
  size: PhotoSize,
): Promise<{ bytes: Uint8Array<ArrayBuffer>; tag: string }> {
  requireRole(viewer, "read-photo");
  const { row } = requireAccess(viewer, "read-photo", await findPhoto(getDatabase(), photoId));
  const bytes = await readPhotoFile(row.file, size);
  if (bytes === null) throw refuseAsNotFound();
  return { bytes, tag: `"${row.file}-${size}"` };
}
