import type { Transaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { type OverruleFate, RulingSchema } from "@/lib/plot/overrule";
import type { CommentView, OverruleView } from "@/lib/plot/review";

const BY = { select: { name: true } } as const;

/** The overrules in force of a sitting, in the order in which they were made, each with what came of it. */
export async function listOverruleViews(
  database: Transaction,
  sittingId: string,
  fates: readonly OverruleFate[],
): Promise<OverruleView[]> {
  const rows = await database.overrule.findMany({
    where: { sittingId, endedAt: null },
    orderBy: { revision: "asc" },
    include: { author: BY },
  });
  const byId = new Map(fates.map((fate) => [fate.overruleId, fate]));
  return rows.map(({ id, ruling, reason, author, madeAt }) => ({
    overruleId: id,
    ruling: parseColumn(RulingSchema, ruling, "Overrule.ruling"),
    reason,
    byName: author.name,
    madeAt: madeAt.toISOString(),
    applies: byId.get(id)?.applies ?? false,
    why: byId.has(id) ? (byId.get(id)?.why ?? null) : "it is not in the points yet",
  }));
}

/** The comments on a sitting, the oldest first, without those that were deleted. */
export async function listCommentViews(
  database: Transaction,
  sittingId: string,
): Promise<(CommentView & { readonly authorId: string })[]> {
  const rows = await database.reviewComment.findMany({
    where: { sittingId, deletedAt: null },
    orderBy: [{ madeAt: "asc" }, { id: "asc" }],
    include: { author: BY },
  });
  return rows.map(({ id, subject, text, author, authorId, madeAt, editedAt }) => ({
    commentId: id,
    subject,
    text,
    byName: author.name,
    authorId,
    madeAt: madeAt.toISOString(),
    editedAt: editedAt?.toISOString() ?? null,
  }));
}
