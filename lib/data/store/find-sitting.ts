import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";
import { type ExerciseDates, toExercisePhase } from "@/lib/plot/to-exercise-phase";
import { toOwnDates } from "@/lib/plot/to-own-dates";
import type { Prisma } from "@/prisma/generated/client";

const SITTING_PARTS = {
  student: { select: { name: true, login: true } },
  exerciseStone: {
    include: {
      stone: true,
      exercise: { include: { section: { include: { instructors: true } }, allowances: true } },
    },
  },
  handIn: {
    include: {
      results: {
        where: { isCurrent: true },
        include: { reference: true, rubricVersion: true },
      },
    },
  },
  releases: { where: { withdrawnAt: null } },
} as const satisfies Prisma.SittingInclude;

export type SittingRow = Prisma.SittingGetPayload<{ include: typeof SITTING_PARTS }>;

/** The dates of the sitting's exercise as they hold for its student. */
export function toSittingDates({ studentId, exerciseStone: { exercise } }: SittingRow): ExerciseDates {
  return toOwnDates(
    exercise,
    exercise.allowances.find((one) => one.studentId === studentId),
  );
}

/** A sitting with what its access hangs on: the student, who teaches the section, whether it is released. */
export interface FoundSitting extends Resource {
  readonly row: SittingRow;
}

/**
 * Whether the student has the same stone on the bench again, and can still hand it in: until then its earlier debriefs are closed
 * to them, or they would plot it with the reference beside.
 */
async function isSatAgain(database: Transaction, row: SittingRow): Promise<boolean> {
  if (toExercisePhase(toSittingDates(row), new Date()) === "closed") return false;
  const { studentId, exerciseStoneId, attempt } = row;
  const later = { studentId, exerciseStoneId, attempt: { gt: attempt }, handIn: { is: null } };
  return (await database.sitting.count({ where: later })) > 0;
}

/** The stones of exercises, by id, whose earlier debriefs are closed to the student while they are on the bench again. */
export async function listSatAgain(database: Transaction, studentId: string): Promise<ReadonlySet<string>> {
  const now = new Date();
  const rows = await database.sitting.findMany({
    where: { studentId, attempt: { gt: 1 }, handIn: { is: null } },
    include: SITTING_PARTS,
  });
  const open = rows.filter((row) => toExercisePhase(toSittingDates(row), now) !== "closed");
  return new Set(open.map(({ exerciseStoneId }) => exerciseStoneId));
}

/** Looks a sitting up by id; null when there is none. Asks nothing of access: that is the caller's. */
export async function findSitting(database: Transaction, sittingId: string): Promise<FoundSitting | null> {
  const row = await database.sitting.findUnique({ where: { id: sittingId }, include: SITTING_PARTS });
  if (row === null) return null;
  return {
    row,
    ownerId: row.studentId,
    instructorIds: row.exerciseStone.exercise.section.instructors.map(({ instructorId }) => instructorId),
    released: row.releases.length > 0 && !(await isSatAgain(database, row)),
  };
}
