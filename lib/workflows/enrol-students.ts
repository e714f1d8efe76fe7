import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({
  sectionId: z.string(),
  studentIds: z.array(z.string()).min(1).max(2000),
});

/**
 * Enrols students in a section; who is enrolled already stays so. All or none. Throws AppError `not-found`,
 * `not-allowed`, or `bad-input` for an id that is no active student's.
 */
export async function enrolStudents(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ enrolled: number }> {
  requireRole(viewer, "enrol-student");
  const { sectionId, studentIds } = parseInput(InputSchema, input);
  const ids = [...new Set(studentIds)];
  return runInTransaction(async (transaction) => {
    const section = await transaction.section.findUnique({
      where: { id: sectionId },
      include: { instructors: true, enrolments: true },
    });
    const resource =
      section === null
        ? null
        : { instructorIds: section.instructors.map(({ instructorId }) => instructorId) };
    requireAccess(viewer, "enrol-student", resource);
    const known = await transaction.user.count({ where: { id: { in: ids }, role: "student", active: true } });
    if (known !== ids.length) {
      throw new AppError("bad-input", "Only students with an active account can be enrolled.", [
        { path: "studentIds", message: "names somebody who is not an active student" },
      ]);
    }
    const already = new Set(section?.enrolments.map(({ studentId }) => studentId));
    const added = ids.filter((id) => !already.has(id));
    await transaction.enrolment.createMany({ data: added.map((studentId) => ({ sectionId, studentId })) });
    await writeTrail(
      transaction,
      viewer,
      ...added.map((studentId) => ({
        action: "enrol-student",
        subjectKind: "section",
        subjectId: sectionId,
        detail: `person ${studentId}`,
      })),
    );
    return { enrolled: added.length };
  });
}
