import { getDatabase } from "@/lib/data/store/database";
import type { Prisma } from "@/prisma/generated/client";

const PARTS = {
  instructors: { include: { instructor: { select: { name: true } } } },
  _count: { select: { enrolments: true } },
  exercises: {
    select: { id: true, terms: true, opensAt: true, stones: { select: { id: true, stoneId: true } } },
  },
} as const satisfies Prisma.SectionInclude;

/** A section with what its sums are added up by: its exercises, their scales and stones. */
export type SectionToAdd = Prisma.SectionGetPayload<{ include: typeof PARTS }>;

/** All sections of the program, by name. The caller has asked lib/access. */
export async function listSectionsToAdd(): Promise<SectionToAdd[]> {
  return getDatabase().section.findMany({
    include: PARTS,
    orderBy: [{ name: "asc" }, { createdAt: "asc" }],
  });
}
