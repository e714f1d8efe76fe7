import type { Transaction } from "@/lib/data/store/database";
import type { ExerciseRow } from "@/lib/plot/staff-view";
import { toExercisePhase } from "@/lib/plot/to-exercise-phase";
import type { Prisma } from "@/prisma/generated/client";

/** Exercises as rows with their counts, newest due date first. */
export async function listExerciseRows(
  database: Transaction,
  where: Prisma.ExerciseWhereInput,
): Promise<ExerciseRow[]> {
  const now = new Date();
  const handedIn = { handIn: { isNot: null } } satisfies Prisma.SittingWhereInput;
  const exercises = await database.exercise.findMany({
    where,
    orderBy: [{ dueAt: "desc" }, { title: "asc" }],
    include: {
      section: { select: { name: true, _count: { select: { enrolments: true } } } },
      stones: {
        select: {
          isRetake: true,
          sittings: {
            where: handedIn,
            select: { releases: { where: { withdrawnAt: null }, select: { id: true } } },
          },
        },
      },
    },
  });
  return exercises.map((exercise) => {
    const sittings = exercise.stones.flatMap((stone) => stone.sittings);
    return {
      exerciseId: exercise.id,
      title: exercise.title,
      sectionId: exercise.sectionId,
      sectionName: exercise.section.name,
      opensAt: exercise.opensAt.toISOString(),
      dueAt: exercise.dueAt.toISOString(),
      closesAt: exercise.closesAt?.toISOString() ?? null,
      phase: toExercisePhase(exercise, now),
      stones: exercise.stones.filter(({ isRetake }) => !isRetake).length,
      students: exercise.section._count.enrolments,
      handedIn: sittings.length,
      released: sittings.filter(({ releases }) => releases.length > 0).length,
    };
  });
}
