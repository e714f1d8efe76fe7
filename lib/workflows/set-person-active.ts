import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({ userId: z.string(), active: z.boolean() });

/**
 * Lets somebody sign in or no more; either way their sessions end. Nobody can shut themselves out, so that a director
 * always remains. Throws AppError `not-allowed`, `not-found` or `conflict`.
 */
export async function setPersonActive(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "manage-people");
  const { userId, active } = parseInput(InputSchema, input);
  if (userId === viewer.userId) {
    throw new AppError(
      "conflict",
      "You cannot change whether you yourself may sign in; another director can.",
    );
  }
  await runInTransaction(async (transaction) => {
    const user = await transaction.user.findUnique({ where: { id: userId } });
    requireAccess(viewer, "manage-people", user === null ? null : { ownerId: user.id });
    if (user?.erasedAt) throw new AppError("conflict", "This account is erased; it cannot be brought back.");
    await transaction.user.update({
      where: { id: userId },
      data: { active, sessionEpoch: { increment: 1 } },
    });
    await writeTrail(transaction, viewer, {
      action: active ? "activate-person" : "deactivate-person",
      subjectKind: "person",
      subjectId: userId,
    });
  });
}
