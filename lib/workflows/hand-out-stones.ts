import { refuseAsNotFound, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { HAND_OUT_PARTS, toHandOutView } from "@/lib/data/store/to-hand-out-view";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { writeTrail } from "@/lib/data/store/write-trail";
import { type HandOutInput, HandOutInputSchema, type Holder } from "@/lib/plot/hand-out";
import { parseInput } from "@/lib/plot/parse-input";

/** The columns that say where the stones go. A student must be active and of a section that the viewer teaches. */
async function toHolderColumns(transaction: Transaction, viewer: Viewer, to: Holder) {
  if (to.kind === "seat") return { seat: to.seat, studentId: null };
  const section = whereSectionInScope(viewer, "read-sections");
  const student = await transaction.user.findFirst({
    where: { id: to.studentId, role: "student", active: true, enrolments: { some: { section } } },
    select: { id: true },
  });
  if (student === null) throw refuseAsNotFound();
  return { seat: "", studentId: student.id };
}

/** Refuses where any of the stones is out already, and says of each with whom. */
async function requireInTray(transaction: Transaction, stoneIds: readonly string[]): Promise<void> {
  const out = await transaction.handOut.findMany({
    where: { stoneId: { in: [...stoneIds] }, returnedAt: null },
    include: { ...HAND_OUT_PARTS, stone: { select: { label: true } } },
  });
  if (out.length === 0) return;
  const faults = out.map((row) => {
    const { holder, handedOutBy } = toHandOutView(row, new Date());
    const path = `stoneIds[${stoneIds.indexOf(row.stoneId)}]`;
    return { path, message: `${row.stone.label} is with ${holder} already, handed out by ${handedOutBy}` };
  });
  const message = faults.map((fault) => fault.message).join("; ");
  throw new AppError("conflict", `Nothing was handed out: ${message}.`, faults);
}

/**
 * Hands stones out to one student or seat: all of them or none. Transactions run one after another, so of two people
 * who hand out the same stone at once the second is told. Throws AppError `not-allowed`, `not-found` for a stone or a
 * student that is not there, `bad-input`, or `conflict` for a stone that is out.
 */
export async function handOutStones(viewer: Viewer, input: HandOutInput): Promise<{ handedOut: number }> {
  requireRole(viewer, "hand-out-stone");
  const { stoneIds, to, dueBackAt, note } = parseInput(HandOutInputSchema, input);
  return runInTransaction(async (transaction) => {
    const holder = await toHolderColumns(transaction, viewer, to);
    const known = await transaction.stone.count({ where: { id: { in: stoneIds } } });
    if (known !== stoneIds.length) throw refuseAsNotFound();
    await requireInTray(transaction, stoneIds);
    const handedOutAt = new Date();
    await transaction.handOut.createMany({
      data: stoneIds.map((stoneId) => ({
        stoneId,
        ...holder,
        handedOutAt,
        handedOutById: viewer.userId,
        dueBackAt: dueBackAt === null ? null : new Date(dueBackAt),
        note,
      })),
    });
    const notes = stoneIds.map((subjectId) => ({
      action: "hand-out-stone",
      subjectKind: "stone",
      subjectId,
    }));
    await writeTrail(transaction, viewer, ...notes);
    return { handedOut: stoneIds.length };
  });
}
