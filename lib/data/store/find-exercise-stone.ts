import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";
import { findStoneOpening } from "@/lib/plot/find-stone-opening";
import type { Prisma } from "@/prisma/generated/client";

const PARTS = {
  stone: { include: { photos: { where: { isShown: true }, orderBy: { position: "asc" } } } },
  retakes: { select: { studentId: true } },
  exercise: { include: { section: { include: { enrolments: { select: { studentId: true } } } } } },
} as const satisfies Prisma.ExerciseStoneInclude;

export type ExerciseStoneRow = Prisma.ExerciseStoneGetPayload<{ include: typeof PARTS }>;

export interface FoundExerciseStone extends Resource {
  readonly row: ExerciseStoneRow;
}

/**
 * A stone of an exercise with its shown photographs; students count as enrolled once the exercise and the stone have opened, and
 * on a stone for retakes those alone who were granted one.
 */
export async function findExerciseStone(
  database: Transaction,
  exerciseStoneId: string,
): Promise<FoundExerciseStone | null> {
  const row = await database.exerciseStone.findUnique({ where: { id: exerciseStoneId }, include: PARTS });
  if (row === null) return null;
  const { opensAt, section } = row.exercise;
  const now = new Date();
  const isOpened = opensAt <= now && findStoneOpening(row, now) === null;
  const granted = new Set(row.retakes.map(({ studentId }) => studentId));
  const enrolled = section.enrolments.map(({ studentId }) => studentId);
  const studentIds = row.isRetake ? enrolled.filter((studentId) => granted.has(studentId)) : enrolled;
  return { row, studentIds: isOpened ? studentIds : [] };
}
