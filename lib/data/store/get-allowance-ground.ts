import { refuseAsNotFound, requireAccess } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import type { Transaction } from "@/lib/data/store/database";
import { findExercise } from "@/lib/data/store/find-exercise";

/**
 * An exercise, one student of its section, and what they are allowed beyond it, for whoever may allow more. Throws
 * AppError `not-found`, also for somebody who is not in the section.
 */
export async function getAllowanceGround(
  transaction: Transaction,
  viewer: Viewer,
  { exerciseId, studentId }: { readonly exerciseId: string; readonly studentId: string },
) {
  const { row } = requireAccess(viewer, "grant-allowance", await findExercise(transaction, exerciseId));
  const enrolment = await transaction.enrolment.findUnique({
    where: { sectionId_studentId: { sectionId: row.sectionId, studentId } },
    include: { student: { select: { name: true } } },
  });
  if (enrolment === null) throw refuseAsNotFound();
  const allowance = await transaction.allowance.findUnique({
    where: { exerciseId_studentId: { exerciseId, studentId } },
  });
  return { exercise: row, studentName: enrolment.student.name, allowance };
}
