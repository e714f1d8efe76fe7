import { getDatabase, runInTransaction } from "@/lib/data/store/database";
import { announceSittings } from "@/lib/data/store/watch-bus";
import { GRACE_MS, isGraceOver } from "@/lib/plot/time-limit";
import { scoreHandIn } from "@/lib/workflows/score-hand-in";
import { followClock } from "@/lib/workflows/timed/follow-clock";
import { freezeSitting } from "@/lib/workflows/timed/freeze-sitting";

/** Hands one sitting in if it is still overdue; null where it is not, or somebody was faster. */
async function handInOne(sittingId: string): Promise<string | null> {
  return runInTransaction(async (transaction) => {
    const row = await transaction.sitting.findUnique({ where: { id: sittingId }, include: { handIn: true } });
    if (row === null || row.handIn !== null || !isGraceOver(row, Date.now())) return null;
    return (await freezeSitting(transaction, null, row, true)).handInId;
  });
}

/**
 * Hands in every sitting whose time ran out and whose browser did not do it within the grace, with all that was saved,
 * and scores it. Of one exercise, of one student, or of all: on start, every few seconds, and before it is read. One
 * that fails is told to the log by its id, and the rest go on.
 */
export async function handInOverdue(
  within: { readonly exerciseId?: string; readonly studentId?: string } = {},
): Promise<{ handedIn: number }> {
  await followClock();
  const { exerciseId, studentId } = within;
  const overdue = await getDatabase().sitting.findMany({
    where: {
      endsAt: { lte: new Date(Date.now() - GRACE_MS) },
      handIn: null,
      ...(exerciseId === undefined ? {} : { exerciseStone: { exerciseId } }),
      ...(studentId === undefined ? {} : { studentId }),
    },
    select: { id: true },
  });
  let handedIn = 0;
  for (const { id } of overdue) {
    try {
      const handInId = await handInOne(id);
      if (handInId === null) continue;
      handedIn += 1;
      announceSittings(id);
      await scoreHandIn(handInId);
    } catch (thrown) {
      console.error(`sitting ${id}, whose time ran out, could not be handed in and scored`, thrown);
    }
  }
  return { handedIn };
}
