import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";

/** Looks a comment on a sitting up by id, whose own it is; null when there is none or it was deleted. */
export async function findComment(
  database: Transaction,
  sittingId: string,
  commentId: string,
): Promise<Resource | null> {
  const row = await database.reviewComment.findFirst({
    where: { id: commentId, sittingId, deletedAt: null },
    select: { authorId: true },
  });
  return row === null ? null : { ownerId: row.authorId };
}
