import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";
import type { Prisma } from "@/prisma/generated/client";

const SECTION_PARTS = {
  instructors: { include: { instructor: { select: { name: true } } } },
  enrolments: { select: { student: { select: { id: true, name: true, login: true } } } },
  exercises: {
    orderBy: [{ dueAt: "asc" }, { id: "asc" }],
    select: {
      id: true,
      title: true,
      opensAt: true,
      dueAt: true,
      terms: true,
      /** Of students who may hand in later. */
      allowances: {
        where: { dueAt: { not: null } },
        select: { studentId: true, dueAt: true, closesAt: true },
      },
      closesAt: true,
      stones: {
        orderBy: { position: "asc" },
        select: { id: true, stoneId: true, isRetake: true, stone: { select: { label: true, trayId: true } } },
      },
    },
  },
} as const satisfies Prisma.SectionInclude;

export type SectionWithParts = Prisma.SectionGetPayload<{ include: typeof SECTION_PARTS }>;

export interface FoundSection extends Resource {
  readonly row: SectionWithParts;
}

/** Looks a section up by id, with its students and its exercises by due date; null when there is none. */
export async function findSection(database: Transaction, sectionId: string): Promise<FoundSection | null> {
  const row = await database.section.findUnique({ where: { id: sectionId }, include: SECTION_PARTS });
  if (row === null) return null;
  return { row, instructorIds: row.instructors.map(({ instructorId }) => instructorId) };
}
