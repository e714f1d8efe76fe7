import type { Transaction } from "@/lib/data/store/database";
import { toEndsAt } from "@/lib/plot/time-limit";

/** What one student may take over each stone of an exercise, as it holds from now on. */
export interface OwnLimit {
  readonly exerciseId: string;
  readonly studentId: string;
  /** The whole limit, extra time included. */
  readonly minutes: number;
  /** What of it came on top just now; 0 or less: nothing. */
  readonly addedMinutes: number;
  readonly closesAt: Date | null;
}

/**
 * Gives the stones that are being timed what came on top: minutes, or what a later closing no longer cuts off. Time that
 * was told is never taken back.
 */
export async function moveRunningEnds(transaction: Transaction, limit: OwnLimit): Promise<void> {
  const { exerciseId, studentId, minutes, addedMinutes, closesAt } = limit;
  const running = await transaction.sitting.findMany({
    where: { studentId, exerciseStone: { exerciseId }, endsAt: { not: null }, handIn: null },
    select: { id: true, openedAt: true, endsAt: true, limitMs: true },
  });
  for (const { id, openedAt, endsAt, limitMs } of running) {
    if (endsAt === null) continue;
    const byMinutes = toEndsAt(endsAt, Math.max(0, addedMinutes), closesAt).getTime() - endsAt.getTime();
    const whole = toEndsAt(openedAt, minutes, closesAt).getTime() - openedAt.getTime();
    const addedMs = Math.max(byMinutes, whole - (limitMs ?? 0));
    if (addedMs <= 0) continue;
    await transaction.sitting.update({
      where: { id },
      data: { endsAt: new Date(endsAt.getTime() + addedMs), limitMs: (limitMs ?? 0) + addedMs },
    });
  }
}
