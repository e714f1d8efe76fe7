import { getDatabase } from "@/lib/data/store/database";
import type { Prisma } from "@/prisma/generated/client";

const PARTS = {
  instructors: { include: { instructor: { select: { name: true } } } },
  _count: { select: { enrolments: true } },
  exercises: { select: { id: true, opensAt: true } },
} as const satisfies Prisma.SectionInclude;

/** A section with the exercises that are added up to it. */
export type SectionToAdd = Prisma.SectionGetPayload<{ include: typeof PARTS }>;

/** All sections of the program, by name. The caller has asked lib/access. */
export async function listSectionsToAdd(): Promise<SectionToAdd[]> {
  return getDatabase().section.findMany({
    include: PARTS,
    orderBy: [{ name: "asc" }, { createdAt: "asc" }],
  });
}

/** The scales and stones of exercises, which their sums are joined by. The caller has asked lib/access. */
export async function listExercisesToAdd(exerciseIds: readonly string[]) {
  return getDatabase().exercise.findMany({
    where: { id: { in: [...exerciseIds] } },
    select: { id: true, terms: true, stones: { select: { id: true, stoneId: true } } },
  });
}
