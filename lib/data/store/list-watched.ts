import { listOpenBenches } from "@/lib/data/store/bench-presence";
import { getDatabase } from "@/lib/data/store/database";
import { toWatchRow, WATCH_PARTS, type WatchedRow } from "@/lib/data/store/to-watch-row";
import { toExercisePhase } from "@/lib/plot/to-exercise-phase";
import { toOwnDates } from "@/lib/plot/to-own-dates";
import type { Prisma } from "@/prisma/generated/client";

/** A sitting on the bench that nobody has touched for so long is not the class now, ms: a school day. */
const DAY_MS = 12 * 60 * 60 * 1000;
/** A sitting stays on the watch for so long once it is handed in, ms. */
const HANDED_IN_MS = 5 * 60 * 1000;

/** What makes a sitting one to be watched now: on the bench and touched today, or handed in just now. */
function whereWatched(nowMs: number): Prisma.SittingWhereInput {
  const today = new Date(nowMs - DAY_MS);
  const now = new Date(nowMs);
  return {
    // Whoever may go on after it closed keeps it among these; each is asked of its own dates below.
    exerciseStone: {
      exercise: {
        OR: [
          { closesAt: null },
          { closesAt: { gt: now } },
          { allowances: { some: { OR: [{ closesAt: { gt: now } }, { dueAt: { gt: now } }] } } },
        ],
      },
    },
    OR: [
      {
        handIn: null,
        OR: [{ openedAt: { gt: today } }, { lastEventAt: { gt: today } }, { id: { in: listOpenBenches() } }],
      },
      { handIn: { handedInAt: { gt: new Date(nowMs - HANDED_IN_MS) } } },
    ],
  };
}

type ReadSitting = Prisma.SittingGetPayload<{ include: typeof WATCH_PARTS }>;

/** The same of a sitting that was read, and with the dates as they hold for its student. */
function isWatched(sitting: ReadSitting, nowMs: number): boolean {
  const { exercise } = sitting.exerciseStone;
  const allowance = exercise.allowances.find(({ studentId }) => studentId === sitting.studentId);
  if (toExercisePhase(toOwnDates(exercise, allowance), new Date(nowMs)) === "closed") return false;
  if (sitting.handIn !== null) return sitting.handIn.handedInAt.getTime() > nowMs - HANDED_IN_MS;
  const touchedMs = Math.max(sitting.openedAt.getTime(), sitting.lastEventAt?.getTime() ?? 0);
  return touchedMs > nowMs - DAY_MS || listOpenBenches().includes(sitting.id);
}

/** The sittings to be watched now that match, in no order. Asks nothing of access: that is the caller's. */
export async function listWatched(where: Prisma.SittingWhereInput): Promise<WatchedRow[]> {
  const nowMs = Date.now();
  const rows = await getDatabase().sitting.findMany({
    where: { AND: [where, whereWatched(nowMs)] },
    include: WATCH_PARTS,
  });
  return rows.filter((row) => isWatched(row, nowMs)).map(toWatchRow);
}

/**
 * Those of some sittings that are to be watched now, in no order: read by their ids alone, since it is asked several times a
 * second and the database would go through all hand-ins for the rest. Asks nothing of access.
 */
export async function listWatchedAmong(sittingIds: Iterable<string>): Promise<WatchedRow[]> {
  const rows = await getDatabase().sitting.findMany({
    where: { id: { in: [...sittingIds] } },
    include: WATCH_PARTS,
  });
  return rows.filter((row) => isWatched(row, Date.now())).map(toWatchRow);
}
