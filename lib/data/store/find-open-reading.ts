import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { getDatabase } from "@/lib/data/store/database";

/** The viewer's second reading of a stone that is not handed in yet, by its id; null where there is none. */
export async function findOpenReading(viewer: Viewer, stoneId: string): Promise<string | null> {
  const row = await getDatabase().secondReading.findFirst({
    where: { stoneId, readerId: viewer.userId, state: "drawing" },
    select: { id: true },
  });
  return row?.id ?? null;
}

/**
 * Refuses what holds a stone's reference to whoever plots it as a second reader and has not handed in. Throws AppError
 * `not-allowed`.
 */
export async function requireUnblinded(viewer: Viewer, stoneId: string): Promise<void> {
  if ((await findOpenReading(viewer, stoneId)) === null) return;
  throw new AppError(
    "not-allowed",
    "You are plotting this stone as its second reader: its reference is shown to you once you have handed in.",
  );
}
