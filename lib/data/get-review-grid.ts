import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { type ExerciseWithParts, findExercise } from "@/lib/data/store/find-exercise";
import { listBlindStones } from "@/lib/data/store/find-open-reading";
import { getRubric } from "@/lib/data/store/get-rubric";
import { listExerciseRows } from "@/lib/data/store/list-exercise-rows";
import { countOlder, listScored, toGroundNow } from "@/lib/data/store/list-scored";
import { parseColumn } from "@/lib/data/store/parse-column";
import { CELL_PARTS, type CellRow, toReviewCell } from "@/lib/data/store/to-review-cell";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ExerciseTermsSchema, resolveTerms } from "@/lib/plot/exercise-terms";
import { type ReviewGrid, ReviewGridSchema } from "@/lib/plot/staff-view";
import { ReferenceSchema } from "@/lib/plot/stone";

function toStones(exercise: ExerciseWithParts, blind: ReadonlyMap<string, string>) {
  const set = exercise.stones.filter(({ isRetake }) => !isRetake);
  return set.map(({ id, stone }) => {
    const isBlind = blind.has(stone.id);
    const latest = isBlind ? undefined : stone.references[0];
    const reference =
      latest === undefined ? null : parseColumn(ReferenceSchema, latest.body, "Reference.body");
    return {
      exerciseStoneId: id,
      stoneId: stone.id,
      label: stone.label,
      clarity: reference?.grades.clarity ?? null,
      isBlind,
    };
  });
}

/** Who is enrolled, and who has sat the exercise and is enrolled no more; by name. */
async function listStudents(exerciseId: string, sectionId: string, sittings: readonly CellRow[]) {
  const allowances = await getDatabase().allowance.findMany({ where: { exerciseId } });
  const allowed = new Map(allowances.map((one) => [one.studentId, one]));
  const enrolments = await getDatabase().enrolment.findMany({
    where: { sectionId },
    select: { student: { select: { id: true, name: true } } },
  });
  const byId = new Map(
    [...enrolments.map(({ student }) => student), ...sittings.map(({ student }) => student)].map(
      ({ id, name }) => {
        const { extraMinutes = 0, reason = "" } = allowed.get(id) ?? {};
        return [id, { studentId: id, name, extraMinutes, extraReason: reason }];
      },
    ),
  );
  return [...byId.values()].sort(
    (a, b) => a.name.localeCompare(b.name, "en") || (a.studentId < b.studentId ? -1 : 1),
  );
}

/**
 * All plots of an exercise, students by stones; without what was scored on a stone that the viewer is reading blind. Throws AppError `not-found` or `not-allowed`.
 */
export async function getReviewGrid(viewer: Viewer, exerciseId: string): Promise<ReviewGrid> {
  requireRole(viewer, "review-exercise");
  const database = getDatabase();
  const found = requireAccess(viewer, "review-exercise", await findExercise(database, exerciseId));
  const exercise = found.row;
  const sittings = await database.sitting.findMany({
    where: { exerciseStone: { exerciseId } },
    orderBy: { attempt: "asc" },
    include: CELL_PARTS,
  });
  const students = await listStudents(exerciseId, exercise.sectionId, sittings);
  const stones = toStones(exercise, await listBlindStones(viewer));
  const terms = parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms");
  const { scales } = resolveTerms(terms);
  const { rubric, row: rubricRow } = getRubric(exercise.rubrics);
  // The latest attempt of each student and stone: later ones overwrite.
  const byPlace = new Map(sittings.map((one) => [`${one.studentId} ${one.exerciseStoneId}`, one]));
  const open = await database.rescore.findFirst({
    where: { exerciseId, state: { in: ["working", "ready"] } },
    select: { state: true },
  });
  const [row] = await listExerciseRows(database, { id: exerciseId });
  return ReviewGridSchema.parse({
    exercise: row,
    revision: exercise.revision,
    notes: exercise.notes,
    rules: parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules"),
    rubric,
    rubricVersion: rubricRow.version,
    older: countOlder(await listScored(database, exerciseId, toGroundNow(exercise))),
    openRescore: open?.state ?? null,
    stones,
    students,
    cells: students.flatMap(({ studentId }) =>
      stones.map(({ exerciseStoneId, clarity, isBlind }) =>
        toReviewCell(
          { studentId, exerciseStoneId },
          byPlace.get(`${studentId} ${exerciseStoneId}`),
          scales,
          clarity ?? undefined,
          isBlind,
        ),
      ),
    ),
  });
}
