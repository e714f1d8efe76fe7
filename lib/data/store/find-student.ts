import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";

export interface FoundStudent extends Resource {
  readonly studentId: string;
  readonly name: string;
}

/**
 * A student as somebody whose progress is read: their own, or in one section, where they are enrolled or have sat
 * something. Null where there is no such student there.
 */
export async function findStudent(
  database: Transaction,
  studentId: string,
  sectionId: string | null,
): Promise<FoundStudent | null> {
  const user = await database.user.findFirst({
    where: { id: studentId, role: "student" },
    select: { id: true, name: true },
  });
  if (user === null) return null;
  const student = { studentId: user.id, name: user.name, ownerId: user.id };
  if (sectionId === null) return student;
  const section = await database.section.findFirst({
    where: {
      id: sectionId,
      OR: [
        { enrolments: { some: { studentId } } },
        { exercises: { some: { stones: { some: { sittings: { some: { studentId } } } } } } },
      ],
    },
    select: { instructors: { select: { instructorId: true } } },
  });
  if (section === null) return null;
  return { ...student, instructorIds: section.instructors.map(({ instructorId }) => instructorId) };
}
