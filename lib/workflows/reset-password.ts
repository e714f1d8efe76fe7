import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { PasswordSchema } from "@/lib/plot/account-input";
import { parseInput } from "@/lib/plot/parse-input";
import { hashPassword } from "@/lib/workflows/hash-password";

const InputSchema = z.strictObject({ userId: z.string(), password: PasswordSchema });

/** Gives somebody a new password, which ends their sessions. Throws AppError `not-allowed`, `not-found` or `bad-input`. */
export async function resetPassword(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "manage-people");
  const { userId, password } = parseInput(InputSchema, input);
  const passwordHash = await hashPassword(password);
  await runInTransaction(async (transaction) => {
    const user = await transaction.user.findUnique({ where: { id: userId } });
    requireAccess(viewer, "manage-people", user === null ? null : { ownerId: user.id });
    if (user?.erasedAt) throw new AppError("conflict", "This account is erased; it cannot be brought back.");
    await transaction.user.update({
      where: { id: userId },
      data: { passwordHash, sessionEpoch: { increment: 1 } },
    });
    await writeTrail(transaction, viewer, {
      action: "reset-password",
      subjectKind: "person",
      subjectId: userId,
    });
  });
}
