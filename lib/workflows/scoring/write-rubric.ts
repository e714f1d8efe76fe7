import { isDeepStrictEqual } from "node:util";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import type { Transaction } from "@/lib/data/store/database";
import type { ExerciseWithParts } from "@/lib/data/store/find-exercise";
import { getRubric } from "@/lib/data/store/get-rubric";
import { toColumn } from "@/lib/data/store/to-column";
import { findRubricFaults, type Rubric, RubricSchema } from "@/lib/plot/rubric";

/**
 * Writes a changed rubric as a new version; results keep the one that they were scored by. Gives the version in force
 * afterwards, the same as before where nothing changes. Throws AppError `bad-input`, its faults under `rubric`.
 */
export async function writeRubric(
  transaction: Transaction,
  viewer: Viewer,
  exercise: ExerciseWithParts,
  rubric: Rubric,
): Promise<number> {
  const { rubric: before, row } = getRubric(exercise.rubrics);
  const faults = findRubricFaults(rubric).map(({ path, message }) => ({ path: `rubric.${path}`, message }));
  if (faults.length > 0) throw new AppError("bad-input", "The rubric was not changed.", faults);
  if (isDeepStrictEqual(rubric, before)) return row.version;
  const version = row.version + 1;
  await transaction.rubricVersion.create({
    data: {
      exerciseId: exercise.id,
      version,
      body: toColumn(RubricSchema, rubric),
      authorId: viewer.userId,
    },
  });
  return version;
}
