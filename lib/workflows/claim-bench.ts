import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { noteWork } from "@/lib/data/store/bench-presence";
import { runInTransaction } from "@/lib/data/store/database";
import {
  requireOwnSitting,
  requireStillOpen,
  requireWriter,
  toOpenness,
} from "@/lib/data/store/require-own-sitting";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { WriterIdSchema } from "@/lib/plot/writer-id";
import { followClock } from "@/lib/workflows/timed/follow-clock";

const InputSchema = z.strictObject({
  sittingId: z.string(),
  writerId: WriterIdSchema,
  takeOver: z.boolean(),
});

/**
 * Makes a tab or device the one that writes a sitting, and tells it what is saved and when the time runs out. Throws AppError `not-found`,
 * `closed`, or `taken-over` when another writes and this one does not ask to take over.
 */
export async function claimBench(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ lastSeq: number; writerId: string; endsAt: string | null }> {
  requireRole(viewer, "write-bench");
  const { sittingId, writerId, takeOver } = parseInput(InputSchema, input);
  await followClock();
  const claimed = await runInTransaction(async (transaction) => {
    const row = await requireOwnSitting(transaction, viewer, sittingId);
    requireStillOpen(toOpenness(row));
    if (row.writerId !== null && !takeOver) requireWriter(row, writerId);
    if (row.writerId !== writerId) {
      await transaction.sitting.update({ where: { id: sittingId }, data: { writerId } });
    }
    if (row.writerId !== null && row.writerId !== writerId) {
      await writeTrail(transaction, viewer, {
        action: "take-over-bench",
        subjectKind: "sitting",
        subjectId: sittingId,
      });
    }
    return { lastSeq: row.lastSeq, writerId, endsAt: row.endsAt?.toISOString() ?? null };
  });
  noteWork(sittingId);
  return claimed;
}
