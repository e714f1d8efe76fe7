import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";
import type { Prisma } from "@/prisma/generated/client";

const EXERCISE_PARTS = {
  section: { include: { instructors: true } },
  stones: {
    orderBy: { position: "asc" },
    include: { stone: { include: { references: { orderBy: { version: "desc" }, take: 1 } } } },
  },
  rubrics: { orderBy: { version: "desc" }, take: 1 },
} as const satisfies Prisma.ExerciseInclude;

export type ExerciseWithParts = Prisma.ExerciseGetPayload<{ include: typeof EXERCISE_PARTS }>;

export interface FoundExercise extends Resource {
  readonly row: ExerciseWithParts;
}

/** Looks an exercise up by id, with its stones and their latest references; null when there is none. */
export async function findExercise(database: Transaction, exerciseId: string): Promise<FoundExercise | null> {
  const row = await database.exercise.findUnique({ where: { id: exerciseId }, include: EXERCISE_PARTS });
  if (row === null) return null;
  return { row, instructorIds: row.section.instructors.map(({ instructorId }) => instructorId) };
}
