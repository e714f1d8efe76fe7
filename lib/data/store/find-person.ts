import type { Resource } from "@/lib/access/can";
import type { Transaction } from "@/lib/data/store/database";
import type { Prisma } from "@/prisma/generated/client";

const PERSON_PARTS = {
  enrolments: { include: { section: { include: { instructors: true } } } },
} as const satisfies Prisma.UserInclude;

export interface FoundPerson extends Resource {
  readonly row: Prisma.UserGetPayload<{ include: typeof PERSON_PARTS }>;
}

/**
 * An account with what access to it hangs on: it is its person's own, and a student's is taught by whoever teaches a
 * section that the student is enrolled in. Null when there is none.
 */
export async function findPerson(database: Transaction, userId: string): Promise<FoundPerson | null> {
  const row = await database.user.findUnique({ where: { id: userId }, include: PERSON_PARTS });
  if (row === null) return null;
  const instructorIds =
    row.role === "student"
      ? row.enrolments.flatMap(({ section }) => section.instructors.map((one) => one.instructorId))
      : [];
  return { row, ownerId: row.id, instructorIds };
}
