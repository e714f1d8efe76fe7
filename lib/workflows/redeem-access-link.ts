import { z } from "zod";
import { AppError } from "@/lib/base/app-error";
import { getDatabase, runInTransaction, type Transaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { type LinkHolder, LinkHolderSchema, LinkTokenSchema } from "@/lib/plot/access-link";
import { PasswordSchema } from "@/lib/plot/account-input";
import { parseInput } from "@/lib/plot/parse-input";
import { hashPassword } from "@/lib/workflows/hash-password";
import { hashToken } from "@/lib/workflows/hash-token";

const InputSchema = z.strictObject({ token: z.string().max(200), password: PasswordSchema });

/** Failures of an address within the window after which no further one is looked at. A class sits behind one. */
const MOST_FAILURES = 60;
const WINDOW_MS = 15 * 60_000;
/** Addresses that are remembered at once; the oldest is forgotten first. */
const MOST_ADDRESSES = 10_000;

const failuresByAddress = new Map<string, number[]>();

function listRecent(address: string): number[] {
  const from = Date.now() - WINDOW_MS;
  return (failuresByAddress.get(address) ?? []).filter((at) => at > from);
}

function noteFailure(address: string): void {
  const recent = [...listRecent(address), Date.now()];
  failuresByAddress.delete(address);
  failuresByAddress.set(address, recent);
  const [oldest] = failuresByAddress.keys();
  if (failuresByAddress.size > MOST_ADDRESSES && oldest !== undefined) failuresByAddress.delete(oldest);
}

/** Unknown, used, replaced, expired, or of an account that is closed: all read the same. */
function refuse(): AppError {
  return new AppError(
    "not-found",
    "This link does not work any more. It may have been used, replaced by a newer one, or be too old; ask for a new one.",
  );
}

async function findLink(database: Transaction, token: string, address: string) {
  if (listRecent(address).length >= MOST_FAILURES) {
    throw new AppError("too-many-attempts", "Too many links that do not work. Wait a quarter of an hour.");
  }
  const link = LinkTokenSchema.safeParse(token).success
    ? await database.accessLink.findUnique({
        where: { tokenHash: hashToken(token) },
        include: { user: true },
      })
    : null;
  if (link === null || link.endedAt !== null || link.expiresAt <= new Date() || !link.user.active) {
    noteFailure(address);
    throw refuse();
  }
  return link;
}

/** Says whose password a link sets. Throws AppError `not-found` or `too-many-attempts`. */
export async function readAccessLink(token: string, address: string): Promise<LinkHolder> {
  const { user, kind } = await findLink(getDatabase(), token, address);
  return LinkHolderSchema.parse({ name: user.name, login: user.login, kind });
}

/**
 * Sets the password of whoever a link was made for, once; every session of the account ends. Asks no viewer: the token
 * is what lets in. Throws AppError `bad-input`, `not-found` or `too-many-attempts`.
 */
export async function redeemAccessLink(
  input: z.input<typeof InputSchema>,
  address: string,
): Promise<{ login: string }> {
  const { token, password } = parseInput(InputSchema, input);
  // Before the costly hash: a wrong link costs nothing.
  await findLink(getDatabase(), token, address);
  const passwordHash = await hashPassword(password);
  return runInTransaction(async (transaction) => {
    const { id, user, kind } = await findLink(transaction, token, address);
    const now = new Date();
    await transaction.accessLink.update({ where: { id }, data: { endedAt: now } });
    await transaction.user.update({
      where: { id: user.id },
      data: { passwordHash, sessionEpoch: { increment: 1 } },
    });
    await writeTrail(
      transaction,
      { userId: user.id, name: user.name },
      {
        action: kind === "invitation" ? "accept-invitation" : "use-reset-link",
        subjectKind: "person",
        subjectId: user.id,
      },
    );
    return { login: user.login };
  });
}
