import "server-only";
import { runInTransaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";

/** Less than this between the wall clock and the steady one is no step, ms: nobody's time hangs on it. */
const STEP_MS = 5000;

interface ClockReading {
  readonly wallMs: number;
  readonly steadyMs: number;
}

const readClocks = (): ClockReading => ({ wallMs: Date.now(), steadyMs: performance.now() });

// One per process: the framework loads this file once for pages and once for routes.
const holder = globalThis as typeof globalThis & {
  loupeworkClock?: { last: ClockReading; following: Promise<void> | null };
};

/** Moves the end of every stone that is being timed, and of none that is handed in. */
async function moveEnds(stepMs: number): Promise<void> {
  await runInTransaction(async (transaction) => {
    const timed = await transaction.sitting.findMany({
      where: { endsAt: { not: null }, handIn: null },
      select: { id: true, endsAt: true },
    });
    for (const { id, endsAt } of timed) {
      if (endsAt === null) continue;
      const moved = new Date(endsAt.getTime() + stepMs);
      await transaction.sitting.update({ where: { id }, data: { endsAt: moved } });
    }
    if (timed.length === 0) return;
    await writeTrail(transaction, null, {
      action: "follow-clock",
      subjectKind: "program",
      subjectId: "clock",
      detail: `the server's clock was set ${stepMs > 0 ? "on" : "back"} by ${Math.round(Math.abs(stepMs) / 1000)} s`,
    });
  });
}

/**
 * Keeps time limits whole when the server's clock is set, or the machine slept: what the wall clock leapt over is
 * nobody's time, so the ends of stones being timed move with it. Called before any end is read; costs two readings
 * while the clocks agree. A step while the program was down cannot be known.
 */
export async function followClock(): Promise<void> {
  holder.loupeworkClock ??= { last: readClocks(), following: null };
  const state = holder.loupeworkClock;
  if (state.following !== null) return state.following;
  const now = readClocks();
  const stepMs = now.wallMs - state.last.wallMs - (now.steadyMs - state.last.steadyMs);
  if (Math.abs(stepMs) < STEP_MS) return;
  state.following = moveEnds(stepMs)
    .then(() => {
      state.last = now;
    })
    .finally(() => {
      state.following = null;
    });
  return state.following;
}
