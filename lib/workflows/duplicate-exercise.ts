import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { type ExerciseWithParts, findExercise } from "@/lib/data/store/find-exercise";
import { getRubric } from "@/lib/data/store/get-rubric";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { ExerciseFieldsSchema } from "@/lib/plot/exercise-input";
import { parseInput } from "@/lib/plot/parse-input";
import { RubricSchema } from "@/lib/plot/rubric";

const InputSchema = z.strictObject({
  exerciseId: z.string(),
  /** The section that the copy is set for; it may be the same. */
  sectionId: z.string(),
  title: ExerciseFieldsSchema.shape.title,
  /** When the copy opens: every other date keeps its distance from it. */
  opensAt: ExerciseFieldsSchema.shape.opensAt,
});

async function requireSection(transaction: Transaction, viewer: Viewer, sectionId: string): Promise<void> {
  const section = await transaction.section.findUnique({
    where: { id: sectionId },
    include: { instructors: true },
  });
  const resource =
    section === null ? null : { instructorIds: section.instructors.map((one) => one.instructorId) };
  requireAccess(viewer, "set-exercise", resource);
}

/** The dates of the copy and its stones. Throws AppError `bad-input` where they would leave the calendar. */
function shiftAll({ opensAt, dueAt, closesAt, debriefsAt, stones }: ExerciseWithParts, opening: Date) {
  const shift = (at: Date) => new Date(at.getTime() - opensAt.getTime() + opening.getTime());
  const shiftOrNot = (at: Date | null) => (at === null ? null : shift(at));
  const dates = {
    opensAt: opening,
    dueAt: shift(dueAt),
    closesAt: shiftOrNot(closesAt),
    debriefsAt: shiftOrNot(debriefsAt),
  };
  // A stone opens before the exercise is due, so that it stays in the calendar where that does.
  const places = stones
    .filter(({ isRetake }) => !isRetake)
    .map((one) => ({ stoneId: one.stoneId, position: one.position, opensAt: shiftOrNot(one.opensAt) }));
  if (Object.values(dates).some((at) => at !== null && !(Math.abs(at.getUTCFullYear() - 2500) < 1000))) {
    throw new AppError("bad-input", "The exercise was not duplicated.", [
      { path: "opensAt", message: "lies outside the calendar" },
    ]);
  }
  return { dates, places };
}

/**
 * Sets a copy of an exercise for a section: the same stones in the same order, rules, notes, terms and the rubric in
 * force as its first version, with every date moved by as much as the opening. Sittings, releases and results stay
 * with the first. Throws AppError `not-allowed`, `not-found` for the exercise or the section, or `bad-input`.
 */
export async function duplicateExercise(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ exerciseId: string }> {
  requireRole(viewer, "set-exercise");
  const { exerciseId, sectionId, title, opensAt } = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const found = await findExercise(transaction, exerciseId);
    const { row } = requireAccess(viewer, "review-exercise", found);
    await requireSection(transaction, viewer, sectionId);
    const {
      id: _id,
      section: _section,
      stones: _stones,
      rubrics,
      revision: _revision,
      createdAt: _made,
      ...kept
    } = row;
    const { rubric } = getRubric(rubrics);
    const { dates, places } = shiftAll(row, new Date(opensAt));
    const copy = await transaction.exercise.create({
      data: {
        ...kept,
        ...dates,
        rules: kept.rules ?? {},
        terms: kept.terms ?? {},
        title,
        sectionId,
        authorId: viewer.userId,
        stones: { create: places },
        rubrics: { create: { version: 1, body: toColumn(RubricSchema, rubric), authorId: viewer.userId } },
      },
    });
    await writeTrail(transaction, viewer, {
      action: "duplicate-exercise",
      subjectKind: "exercise",
      subjectId: copy.id,
      detail: `${title}, from ${row.title}`.slice(0, 400),
    });
    return { exerciseId: copy.id };
  });
}
