import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { type ExerciseWithParts, findExercise } from "@/lib/data/store/find-exercise";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { getRubric } from "@/lib/data/store/get-rubric";
import { parseColumn } from "@/lib/data/store/parse-column";
import { EXERCISE_SET_FORMAT, type ExerciseSet, ExerciseSetSchema } from "@/lib/plot/exercise-set";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { ReferenceSchema, StoneBodySchema } from "@/lib/plot/stone";

function toStones(exercise: ExerciseWithParts): unknown[] {
  return exercise.stones.flatMap(({ stone, isRetake }) => {
    if (isRetake) return [];
    const latest = stone.references[0];
    if (latest === undefined) return [];
    return [
      {
        id: stone.label,
        ...parseColumn(StoneBodySchema, stone.body, "Stone.body"),
        ...parseColumn(ReferenceSchema, latest.body, "Reference.body"),
      },
    ];
  });
}

/**
 * An exercise as an exercise set: its stones with their latest references, under their labels, and the rubric and
 * terms that it is scored by. A stone that has no reference yet is left out. Throws AppError `not-found` or `reading-blind`.
 */
export async function exportExerciseSet(viewer: Viewer, exerciseId: string): Promise<ExerciseSet> {
  requireRole(viewer, "review-exercise");
  const found = requireAccess(viewer, "review-exercise", await findExercise(getDatabase(), exerciseId));
  const exercise = found.row;
  await requireUnblinded(
    viewer,
    exercise.stones.map(({ stone }) => stone.id),
  );
  const terms = parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms");
  return ExerciseSetSchema.parse({
    format: EXERCISE_SET_FORMAT,
    version: 1,
    title: exercise.title,
    ...(exercise.notes === "" ? {} : { notes: exercise.notes }),
    rubric: getRubric(exercise.rubrics).rubric,
    ...(Object.keys(terms.scales).length === 0 ? {} : { scales: terms.scales }),
    ...(terms.characteristics.length === 0 ? {} : { characteristics: terms.characteristics }),
    stones: toStones(exercise),
  });
}
