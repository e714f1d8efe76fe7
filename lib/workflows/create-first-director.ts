import { z } from "zod";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { LoginSchema, PasswordSchema, PersonNameSchema } from "@/lib/plot/account-input";
import { parseInput } from "@/lib/plot/parse-input";
import { hashPassword } from "@/lib/workflows/hash-password";

const InputSchema = z.strictObject({ login: LoginSchema, name: PersonNameSchema, password: PasswordSchema });

/**
 * Makes the first account of a program, a director's. Nobody is signed in yet, so it asks no viewer: it works only
 * while there is no account at all. Throws AppError `bad-input`, or `not-found` once there is one.
 */
export async function createFirstDirector(input: z.input<typeof InputSchema>): Promise<{ userId: string }> {
  const { login, name, password } = parseInput(InputSchema, input);
  const passwordHash = await hashPassword(password);
  return runInTransaction(async (transaction) => {
    if ((await transaction.user.count()) > 0) {
      throw new AppError("not-found", "The first account is made already. Sign in with it.");
    }
    const user = await transaction.user.create({ data: { login, name, role: "director", passwordHash } });
    await writeTrail(
      transaction,
      { userId: user.id, name },
      {
        action: "create-person",
        subjectKind: "person",
        subjectId: user.id,
        detail: "the first director",
      },
    );
    return { userId: user.id };
  });
}
