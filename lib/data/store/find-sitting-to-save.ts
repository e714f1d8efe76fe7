import { z } from "zod";
import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";
import type { TimedSitting } from "@/lib/plot/time-limit";
import type { ExerciseDates } from "@/lib/plot/to-exercise-phase";
import { toOwnDates } from "@/lib/plot/to-own-dates";

const RowSchema = z.object({
  id: z.string(),
  studentId: z.string(),
  writerId: z.string().nullable(),
  lastSeq: z.int(),
  state: z.unknown(),
  openedAt: z.date(),
  endsAt: z.date().nullable(),
  limitMs: z.int().nullable(),
  handInId: z.string().nullable(),
  opensAt: z.date(),
  dueAt: z.date(),
  closesAt: z.date().nullable(),
  ownDueAt: z.date().nullable(),
  ownClosesAt: z.date().nullable(),
  terms: z.unknown(),
  body: z.unknown(),
});

/** What a save asks of a sitting, and no more: it is read with every step of every bench. */
export interface SittingToSave extends TimedSitting {
  readonly id: string;
  readonly writerId: string | null;
  readonly lastSeq: number;
  /** Columns as they are stored: `Sitting.state`, `Exercise.terms`, `Stone.body`. */
  readonly state: unknown;
  readonly terms: unknown;
  readonly body: unknown;
  readonly isHandedIn: boolean;
  /** The exercise's dates as they hold for the student. */
  readonly dates: ExerciseDates;
}

/**
 * Looks a sitting up by id in one statement, where the client would send one for each table; null when there is none. Asks
 * nothing of access: that is the caller's.
 */
export async function findSittingToSave(
  transaction: Transaction,
  sittingId: string,
): Promise<(Resource & { readonly row: SittingToSave }) | null> {
  const rows = await transaction.$queryRaw<unknown[]>`
    SELECT s."id", s."studentId", s."writerId", s."lastSeq", s."state", s."openedAt", s."endsAt", s."limitMs",
      h."id" AS "handInId", e."opensAt", e."dueAt", e."closesAt", a."dueAt" AS "ownDueAt", a."closesAt" AS "ownClosesAt",
      e."terms", t."body"
    FROM "Sitting" s
    JOIN "ExerciseStone" x ON x."id" = s."exerciseStoneId"
    JOIN "Exercise" e ON e."id" = x."exerciseId"
    JOIN "Stone" t ON t."id" = x."stoneId"
    LEFT JOIN "HandIn" h ON h."sittingId" = s."id"
    LEFT JOIN "Allowance" a ON a."exerciseId" = e."id" AND a."studentId" = s."studentId"
    WHERE s."id" = ${sittingId}`;
  if (rows[0] === undefined) return null;
  const { studentId, handInId, opensAt, dueAt, closesAt, ownDueAt, ownClosesAt, ...rest } = RowSchema.parse(
    rows[0],
  );
  const dates = toOwnDates({ opensAt, dueAt, closesAt }, { dueAt: ownDueAt, closesAt: ownClosesAt });
  return { ownerId: studentId, row: { ...rest, isHandedIn: handInId !== null, dates } };
}
