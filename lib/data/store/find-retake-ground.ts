import { refuseAsNotFound, requireAccess } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import type { Transaction } from "@/lib/data/store/database";
import { findExercise } from "@/lib/data/store/find-exercise";

/**
 * A stone of an exercise that a student of its section has handed in, for whoever may grant a retake of it. Throws
 * AppError `not-found`, or `conflict` where the student has not handed it in.
 */
export async function getRetakeGround(
  database: Transaction,
  viewer: Viewer,
  input: { readonly exerciseId: string; readonly exerciseStoneId: string; readonly studentId: string },
) {
  const { exerciseId, exerciseStoneId, studentId } = input;
  const { row } = requireAccess(viewer, "grant-allowance", await findExercise(database, exerciseId));
  const place = row.stones.find(({ id, isRetake }) => id === exerciseStoneId && !isRetake);
  const enrolment = await database.enrolment.findUnique({
    where: { sectionId_studentId: { sectionId: row.sectionId, studentId } },
    include: { student: { select: { name: true } } },
  });
  if (place === undefined || enrolment === null) throw refuseAsNotFound();
  const handedIn = await database.sitting.count({
    where: { studentId, exerciseStoneId, handIn: { isNot: null } },
  });
  if (handedIn === 0) {
    throw new AppError("conflict", "A retake is of a stone that the student has handed in.");
  }
  return { exercise: row, place, studentName: enrolment.student.name };
}
