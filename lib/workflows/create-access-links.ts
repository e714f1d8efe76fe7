import { randomBytes } from "node:crypto";
import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { findPerson } from "@/lib/data/store/find-person";
import { writeTrail } from "@/lib/data/store/write-trail";
import { type MadeLink, MadeLinkSchema } from "@/lib/plot/access-link";
import { parseInput } from "@/lib/plot/parse-input";
import { hashToken } from "@/lib/workflows/hash-token";

const InputSchema = z.strictObject({ userIds: z.array(z.string()).min(1).max(2000) });

const DAY_MS = 86_400_000;
/** An invitation may wait for the first lesson; a reset is for somebody who stands at the desk. */
const VALID_MS = { invitation: 21 * DAY_MS, reset: 2 * DAY_MS } as const;
const TOKEN_BYTES = 32;

async function makeLink(
  transaction: Transaction,
  viewer: Viewer,
  userId: string,
  now: Date,
): Promise<MadeLink> {
  const { row } = requireAccess(viewer, "send-link", await findPerson(transaction, userId));
  if (!row.active) {
    throw new AppError("conflict", `The account of ${row.name} is deactivated; no link was made.`, [
      { path: "userIds", message: "names somebody whose account is deactivated" },
    ]);
  }
  const kind = row.passwordHash === "-" ? "invitation" : "reset";
  const token = randomBytes(TOKEN_BYTES).toString("base64url");
  const expiresAt = new Date(now.getTime() + VALID_MS[kind]);
  await transaction.accessLink.updateMany({ where: { userId, endedAt: null }, data: { endedAt: now } });
  await transaction.accessLink.create({
    data: { userId, kind, tokenHash: hashToken(token), createdById: viewer.userId, expiresAt },
  });
  await writeTrail(transaction, viewer, {
    action: kind === "invitation" ? "invite-person" : "make-reset-link",
    subjectKind: "person",
    subjectId: userId,
  });
  return MadeLinkSchema.parse({
    userId,
    name: row.name,
    login: row.login,
    kind,
    token,
    expiresAt: expiresAt.toISOString(),
  });
}

/**
 * Makes a one-time link for each of the people: an invitation for who has no password yet, a reset for who has; what
 * was made for them before works no more. The tokens are given back this once and kept nowhere. All or none. Throws
 * AppError `not-allowed`, `not-found`, or `conflict` for a deactivated account.
 */
export async function createAccessLinks(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<MadeLink[]> {
  requireRole(viewer, "send-link");
  const ids = [...new Set(parseInput(InputSchema, input).userIds)];
  return runInTransaction(async (transaction) => {
    const now = new Date();
    const links: MadeLink[] = [];
    for (const userId of ids) links.push(await makeLink(transaction, viewer, userId, now));
    return links;
  });
}
