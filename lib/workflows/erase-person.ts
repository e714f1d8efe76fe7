import { randomBytes } from "node:crypto";
import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { findPerson } from "@/lib/data/store/find-person";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { eraseReasons } from "@/lib/plot/erase-reasons";
import { parseInput } from "@/lib/plot/parse-input";
import { ScoreDetailSchema, ScoreResultSchema } from "@/lib/plot/score-result";

const InputSchema = z.strictObject({ userId: z.string() });

/** What everybody who is erased is called; the trail's trigger knows this name. */
const ERASED_NAME = "Erased student";

/** Takes away what is written to or about the person, or says where they signed in from. */
async function removeTexts(transaction: Transaction, userId: string, login: string): Promise<void> {
  await transaction.signInAttempt.deleteMany({ where: { login } });
  await transaction.accessLink.deleteMany({ where: { userId } });
  await transaction.benchNote.deleteMany({ where: { sitting: { studentId: userId } } });
  await transaction.reviewComment.deleteMany({ where: { sitting: { studentId: userId } } });
  await transaction.overrule.updateMany({ where: { sitting: { studentId: userId } }, data: { reason: "" } });
  await transaction.allowance.updateMany({ where: { studentId: userId }, data: { reason: "" } });
  await transaction.retake.updateMany({ where: { studentId: userId }, data: { reason: "" } });
  await transaction.stoneCheck.deleteMany({ where: { byId: userId } });
  await transaction.handOut.updateMany({ where: { studentId: userId }, data: { note: "" } });
  await transaction.sitting.updateMany({ where: { studentId: userId }, data: { writerId: null } });
}

/**
 * A result names whose plot it is of: that becomes the name of nobody. What was written of it, the reasons of overrules, goes;
 * all else of it stays.
 */
async function renameResults(transaction: Transaction, userId: string, login: string): Promise<void> {
  const rows = await transaction.result.findMany({ where: { handIn: { sitting: { studentId: userId } } } });
  for (const row of rows) {
    const { result, detail } = eraseReasons({
      result: parseColumn(ScoreResultSchema, row.result, "Result.result"),
      detail: parseColumn(ScoreDetailSchema, row.detail, "Result.detail"),
    });
    await transaction.result.update({
      where: { id: row.id },
      data: {
        result: toColumn(ScoreResultSchema, { ...result, by: login }),
        detail: toColumn(ScoreDetailSchema, detail),
      },
    });
  }
}

/** The name in the trail becomes that of an erased student; what was done and when stays. */
async function clearTrail(
  transaction: Transaction,
  userId: string,
  login: string,
  name: string,
): Promise<void> {
  await transaction.trailEntry.updateMany({ where: { actorId: userId }, data: { actorName: ERASED_NAME } });
  const own = { OR: [{ actorId: userId }, { subjectId: userId }] };
  for (const word of [login, name]) {
    await transaction.trailEntry.updateMany({
      where: { ...own, detail: { contains: word } },
      data: { detail: "" },
    });
  }
}

/**
 * Erases a student for good: name and sign-in name go (the latter is free again), notes to them, their
 * hand-in checks and their sign-ins are removed, and every session ends. Sittings, hand-ins and results stay, of nobody, so that the statistics stay what
 * they were. Cannot be undone. Throws AppError `not-allowed`, `not-found`, or `conflict` for somebody who is no
 * student or is erased already.
 */
export async function erasePerson(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "erase-person");
  const { userId } = parseInput(InputSchema, input);
  await runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "erase-person", await findPerson(transaction, userId));
    if (row.role !== "student" || row.erasedAt !== null) {
      throw new AppError("conflict", "Only a student who is not erased yet can be erased.");
    }
    const login = `erased-${randomBytes(8).toString("hex")}`;
    await transaction.user.update({
      where: { id: userId },
      data: {
        name: ERASED_NAME,
        login,
        passwordHash: "-",
        active: false,
        lastSignInAt: null,
        erasedAt: new Date(),
        sessionEpoch: { increment: 1 },
      },
    });
    await renameResults(transaction, userId, login);
    await removeTexts(transaction, userId, row.login);
    await clearTrail(transaction, userId, row.login, row.name);
    await writeTrail(transaction, viewer, {
      action: "erase-person",
      subjectKind: "person",
      subjectId: userId,
    });
  });
}
