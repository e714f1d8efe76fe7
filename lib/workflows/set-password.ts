import { z } from "zod";
import { requireAccess } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { getDatabase, runInTransaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { PasswordSchema } from "@/lib/plot/account-input";
import { parseInput } from "@/lib/plot/parse-input";
import { checkPassword } from "@/lib/workflows/check-password";
import { hashPassword } from "@/lib/workflows/hash-password";

const InputSchema = z.strictObject({ current: z.string().max(200), next: PasswordSchema });

/**
 * Changes one's own password, by the one in force. Every session of the account ends with it, this one too. Throws
 * AppError `bad-input`.
 */
export async function setPassword(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  const { current, next } = parseInput(InputSchema, input);
  const user = await getDatabase().user.findUnique({ where: { id: viewer.userId } });
  requireAccess(viewer, "change-own-password", user === null ? null : { ownerId: user.id });
  if (!(await checkPassword(current, user?.passwordHash ?? null))) {
    throw new AppError("bad-input", "The present password is not right; nothing was changed.", [
      { path: "current", message: "is not right" },
    ]);
  }
  const passwordHash = await hashPassword(next);
  await runInTransaction(async (transaction) => {
    await transaction.user.update({
      where: { id: viewer.userId },
      data: { passwordHash, sessionEpoch: { increment: 1 } },
    });
    await writeTrail(transaction, viewer, {
      action: "change-password",
      subjectKind: "person",
      subjectId: viewer.userId,
    });
  });
}
