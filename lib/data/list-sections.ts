import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { type SectionRow, SectionRowSchema } from "@/lib/plot/staff-view";

/** The sections that the viewer teaches, all for a director; by term and name. */
export async function listSections(viewer: Viewer): Promise<SectionRow[]> {
  const sections = await getDatabase().section.findMany({
    where: whereSectionInScope(viewer, "read-sections"),
    orderBy: [{ term: "desc" }, { name: "asc" }],
    include: {
      _count: { select: { enrolments: true } },
      instructors: {
        include: { instructor: { select: { name: true } } },
        orderBy: { instructor: { name: "asc" } },
      },
    },
  });
  return sections.map((section) =>
    SectionRowSchema.parse({
      sectionId: section.id,
      name: section.name,
      term: section.term,
      students: section._count.enrolments,
      instructors: section.instructors.map(({ instructor }) => instructor.name),
    }),
  );
}
