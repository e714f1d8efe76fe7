import type { HandOutView } from "@/lib/plot/hand-out";
import type { Prisma } from "@/prisma/generated/client";

const NAME = { select: { name: true } } as const;

export const HAND_OUT_PARTS = {
  student: NAME,
  handedOutBy: NAME,
  returnedBy: NAME,
} as const satisfies Prisma.HandOutInclude;

export type HandOutRow = Prisma.HandOutGetPayload<{ include: typeof HAND_OUT_PARTS }>;

/** A hand-out as staff read it; overdue as of now. */
export function toHandOutView(row: HandOutRow, now: Date): HandOutView {
  const isOverdue = row.returnedAt === null && row.dueBackAt !== null && row.dueBackAt < now;
  return {
    handOutId: row.id,
    holder: row.student?.name ?? row.seat,
    isSeat: row.student === null,
    handedOutAt: row.handedOutAt.toISOString(),
    handedOutBy: row.handedOutBy.name,
    dueBackAt: row.dueBackAt?.toISOString() ?? null,
    isOverdue,
    returnedAt: row.returnedAt?.toISOString() ?? null,
    returnedBy: row.returnedBy?.name ?? null,
    note: row.note,
  };
}
