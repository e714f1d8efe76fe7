import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { findProgramSettings } from "@/lib/data/store/find-program-settings";
import { resolveExerciseStones } from "@/lib/data/store/resolve-exercise-stones";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { ExerciseFieldsSchema, findDateFaults } from "@/lib/plot/exercise-input";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { parseInput } from "@/lib/plot/parse-input";
import { findRubricFaults, RubricSchema, resolveRubric, resolveSetRubric } from "@/lib/plot/rubric";

const InputSchema = z.strictObject({ sectionId: z.string(), ...ExerciseFieldsSchema.shape });

/**
 * Sets an exercise for a section, with the first version of its rubric: the program's defaults, the tray's own numbers
 * over them, and what is asked for over both. The stones' scales and characteristics are kept with it as they are now. Throws AppError `not-allowed`, `not-found` or `bad-input`.
 */
export async function createExercise(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ exerciseId: string }> {
  requireRole(viewer, "set-exercise");
  const parsed = parseInput(InputSchema, input);
  const { sectionId, stoneIds, stoneOpenings, rubric: overrides, rules, ...fields } = parsed;
  return runInTransaction(async (transaction) => {
    const section = await transaction.section.findUnique({
      where: { id: sectionId },
      include: { instructors: true },
    });
    const resource =
      section === null ? null : { instructorIds: section.instructors.map((one) => one.instructorId) };
    requireAccess(viewer, "set-exercise", resource);
    const ground = await resolveExerciseStones(transaction, stoneIds);
    const { rubric: defaults } = await findProgramSettings(transaction);
    const rubric = resolveRubric(overrides, resolveSetRubric(ground.rubric, defaults));
    const faults = [
      ...findDateFaults(parsed),
      ...findRubricFaults(rubric).map(({ path, message }) => ({ path: `rubric.${path}`, message })),
    ];
    if (faults.length > 0) throw new AppError("bad-input", "The exercise was not set.", faults);
    const exercise = await transaction.exercise.create({
      data: {
        ...fields,
        sectionId,
        authorId: viewer.userId,
        rules: toColumn(ExerciseRulesSchema, rules),
        terms: toColumn(ExerciseTermsSchema, ground.terms),
        stones: {
          create: stoneIds.map((stoneId, index) => ({
            stoneId,
            position: index + 1,
            opensAt: stoneOpenings[stoneId] ?? null,
          })),
        },
        rubrics: { create: { version: 1, body: toColumn(RubricSchema, rubric), authorId: viewer.userId } },
      },
    });
    await writeTrail(transaction, viewer, {
      action: "create-exercise",
      subjectKind: "exercise",
      subjectId: exercise.id,
      detail: fields.title,
    });
    return { exerciseId: exercise.id };
  });
}
