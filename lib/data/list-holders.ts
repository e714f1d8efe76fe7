import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { type HolderOption, HolderOptionSchema } from "@/lib/plot/hand-out";

/** The students to whom the viewer may hand a stone: those enrolled in the sections that they teach; by name. */
export async function listHolders(viewer: Viewer): Promise<HolderOption[]> {
  requireRole(viewer, "hand-out-stone");
  const section = whereSectionInScope(viewer, "read-sections");
  const students = await getDatabase().user.findMany({
    where: { role: "student", active: true, enrolments: { some: { section } } },
    orderBy: [{ name: "asc" }, { login: "asc" }],
    include: { enrolments: { where: { section }, select: { section: { select: { name: true } } } } },
  });
  return students.map((student) =>
    HolderOptionSchema.parse({
      studentId: student.id,
      name: student.name,
      sections: student.enrolments.map((enrolment) => enrolment.section.name).sort(),
    }),
  );
}
