import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({
  name: z.string().trim().min(1, "give the section a name").max(120),
  term: z.string().trim().min(1, "say which term").max(60),
  instructorIds: z.array(z.string()).max(50),
});

/** Makes a section with those who teach it. Throws AppError `not-allowed` or `bad-input`. */
export async function createSection(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ sectionId: string }> {
  requireRole(viewer, "make-section");
  const { name, term, instructorIds } = parseInput(InputSchema, input);
  const ids = [...new Set(instructorIds)];
  return runInTransaction(async (transaction) => {
    const known = await transaction.user.count({
      where: { id: { in: ids }, role: "instructor", active: true },
    });
    if (known !== ids.length) {
      throw new AppError("bad-input", "A section is taught by instructors with an active account.", [
        { path: "instructorIds", message: "names somebody who is not an active instructor" },
      ]);
    }
    const section = await transaction.section.create({
      data: {
        name,
        term,
        instructors: { createMany: { data: ids.map((instructorId) => ({ instructorId })) } },
      },
    });
    await writeTrail(transaction, viewer, {
      action: "create-section",
      subjectKind: "section",
      subjectId: section.id,
      detail: `${name}, ${term}`,
    });
    return { sectionId: section.id };
  });
}
