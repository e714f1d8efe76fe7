import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { checkPassword } from "@/lib/workflows/check-password";

/** Failures within the window after which no further attempt is taken. */
const MOST_PER_ACCOUNT = 10;
/** A whole classroom may sit behind one address, so this is wider. */
const MOST_PER_ADDRESS = 100;
const WINDOW_MS = 15 * 60_000;
/** Attempts older than this are forgotten. */
const KEPT_MS = 24 * 60 * 60_000;

/** What a session is begun with. */
export interface SignedIn {
  readonly userId: string;
  readonly epoch: number;
  readonly name: string;
}

/** Notes the attempt as failed before the password is looked at, so that many at once cannot slip past the count. */
async function noteAttempt(transaction: Transaction, login: string, address: string): Promise<number> {
  const now = Date.now();
  await transaction.signInAttempt.deleteMany({ where: { at: { lt: new Date(now - KEPT_MS) } } });
  const recent = { succeeded: false, at: { gt: new Date(now - WINDOW_MS) } };
  const byAccount = await transaction.signInAttempt.count({ where: { ...recent, login } });
  const byAddress = await transaction.signInAttempt.count({ where: { ...recent, address } });
  if (byAccount >= MOST_PER_ACCOUNT || byAddress >= MOST_PER_ADDRESS) {
    throw new AppError(
      "too-many-attempts",
      "Too many tries to sign in. Wait a quarter of an hour, or ask your director for a new password.",
    );
  }
  const attempt = await transaction.signInAttempt.create({
    data: { login, address, succeeded: false, at: new Date(now) },
  });
  return attempt.id;
}

/**
 * Checks a sign-in name and password. Null for a wrong pair, an unknown or an inactive account, which take the same
 * work and read the same. Throws AppError `too-many-attempts`, whether or not there is such an account.
 */
export async function signIn(given: {
  readonly login: string;
  readonly password: string;
  readonly address: string;
}): Promise<SignedIn | null> {
  const login = given.login.trim().toLowerCase().slice(0, 64);
  const { attemptId, user } = await runInTransaction(async (transaction) => ({
    attemptId: await noteAttempt(transaction, login, given.address.slice(0, 64)),
    user: await transaction.user.findUnique({ where: { login } }),
  }));
  const active = user?.active === true ? user : null;
  const same = await checkPassword(given.password.slice(0, 200), active?.passwordHash ?? null);
  if (!same || active === null) return null;
  await runInTransaction(async (transaction) => {
    await transaction.signInAttempt.update({ where: { id: attemptId }, data: { succeeded: true } });
    await transaction.user.update({ where: { id: active.id }, data: { lastSignInAt: new Date() } });
  });
  return { userId: active.id, epoch: active.sessionEpoch, name: active.name };
}
