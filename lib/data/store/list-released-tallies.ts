import type { Transaction } from "@/lib/data/store/database";
import type { Prisma } from "@/prisma/generated/client";

const TALLY_PARTS = {
  counts: true,
  handedInAt: true,
  totalHundredths: true,
  sittingId: true,
  exercise: { select: { id: true, title: true, terms: true } },
  exerciseStone: {
    select: {
      id: true,
      exerciseId: true,
      stone: { select: { id: true, label: true } },
      exercise: { select: { rules: true } },
    },
  },
} as const satisfies Prisma.ResultTallySelect;

export type ReleasedTally = Prisma.ResultTallyGetPayload<{ select: typeof TALLY_PARTS }>;

/** The sittings of a student whose debrief is released now; in one section, or in all. */
function whereReleased(studentId: string, sectionId: string | null): Prisma.SittingWhereInput {
  return {
    studentId,
    releases: { some: { withdrawnAt: null } },
    ...(sectionId === null ? {} : { exerciseStone: { exercise: { sectionId } } }),
  };
}

/** The tallies of a student's released debriefs, the earliest hand-in first. Nothing that is not released enters it. */
export async function listReleasedTallies(
  database: Transaction,
  studentId: string,
  sectionId: string | null,
): Promise<ReleasedTally[]> {
  return database.resultTally.findMany({
    where: { studentId, sitting: whereReleased(studentId, sectionId) },
    orderBy: [{ handedInAt: "asc" }, { sittingId: "asc" }],
    select: TALLY_PARTS,
  });
}

/** The current results of the same sittings that have no tally yet: scored before there were tallies. */
export async function listReleasedUncounted(
  database: Transaction,
  studentId: string,
  sectionId: string | null,
): Promise<string[]> {
  const rows = await database.result.findMany({
    where: { isCurrent: true, tally: null, handIn: { sitting: whereReleased(studentId, sectionId) } },
    select: { id: true },
  });
  return rows.map(({ id }) => id);
}
