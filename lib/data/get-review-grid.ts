import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { type ExerciseWithParts, findExercise } from "@/lib/data/store/find-exercise";
import { listBlindStones } from "@/lib/data/store/find-open-reading";
import { getRubric } from "@/lib/data/store/get-rubric";
import { listExerciseRows } from "@/lib/data/store/list-exercise-rows";
import { countOlder, listScored, toGroundNow } from "@/lib/data/store/list-scored";
import { parseColumn } from "@/lib/data/store/parse-column";
import { CELL_PARTS, type CellRow, toCellState, toReviewCell } from "@/lib/data/store/to-review-cell";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ExerciseTermsSchema, resolveTerms } from "@/lib/plot/exercise-terms";
import { type ReviewGrid, ReviewGridSchema } from "@/lib/plot/staff-view";
import { ReferenceSchema } from "@/lib/plot/stone";

/** The stones that are set for all; those of retakes too, where they are asked for. */
function toStones(exercise: ExerciseWithParts, blind: ReadonlyMap<string, string>, areRetakesToo: boolean) {
  const set = exercise.stones.filter(({ isRetake }) => areRetakesToo || !isRetake);
  return set.map(({ id, stone, opensAt }) => {
    const isBlind = blind.has(stone.id);
    const latest = isBlind ? undefined : stone.references[0];
    const reference =
      latest === undefined ? null : parseColumn(ReferenceSchema, latest.body, "Reference.body");
    return {
      exerciseStoneId: id,
      stoneId: stone.id,
      label: stone.label,
      clarity: reference?.grades.clarity ?? null,
      opensAt: opensAt?.toISOString() ?? null,
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
        const own = allowed.get(id);
        const student = {
          studentId: id,
          name,
          extraMinutes: own?.extraMinutes ?? 0,
          extraAttempts: own?.extraAttempts ?? 0,
          dueAt: own?.dueAt?.toISOString() ?? null,
          closesAt: own?.closesAt?.toISOString() ?? null,
          extraReason: own?.reason ?? "",
        };
        return [id, student];
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
    orderBy: [{ openedAt: "asc" }, { attempt: "asc" }],
    include: CELL_PARTS,
  });
  const retakes = await database.retake.findMany({
    where: { replaces: { exerciseId } },
    orderBy: { grantedAt: "asc" },
    select: { studentId: true, exerciseStoneId: true, replacesId: true },
  });
  const students = await listStudents(exerciseId, exercise.sectionId, sittings);
  const blind = await listBlindStones(viewer);
  const stones = toStones(exercise, blind, false);
  const terms = parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms");
  const { scales } = resolveTerms(terms);
  const { rubric, row: rubricRow } = getRubric(exercise.rubrics);
  const replaced = new Map(retakes.map((one) => [`${one.studentId} ${one.exerciseStoneId}`, one.replacesId]));
  // The attempts of each student and stone, on whichever stone a retake of it was; the latest last.
  const byPlace = new Map<string, CellRow[]>();
  for (const one of sittings) {
    const place = replaced.get(`${one.studentId} ${one.exerciseStoneId}`) ?? one.exerciseStoneId;
    const key = `${one.studentId} ${place}`;
    byPlace.set(key, [...(byPlace.get(key) ?? []), one]);
  }
  const satOn = new Map(toStones(exercise, blind, true).map((one) => [one.exerciseStoneId, one]));
  const open = await database.rescore.findFirst({
    where: { exerciseId, state: { in: ["working", "ready"] } },
    select: { state: true },
  });
  const [row] = await listExerciseRows(database, { id: exerciseId });
  return ReviewGridSchema.parse({
    exercise: row,
    revision: exercise.revision,
    notes: exercise.notes,
    debriefsAt: exercise.debriefsAt?.toISOString() ?? null,
    rules: parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules"),
    rubric,
    rubricVersion: rubricRow.version,
    older: countOlder(await listScored(database, exerciseId, toGroundNow(exercise))),
    openRescore: open?.state ?? null,
    stones,
    students,
    cells: students.flatMap(({ studentId }) =>
      stones.map((stone) => {
        const { exerciseStoneId } = stone;
        const attempts = byPlace.get(`${studentId} ${exerciseStoneId}`) ?? [];
        const sitting = attempts.at(-1);
        const sat = satOn.get(sitting?.exerciseStoneId ?? exerciseStoneId) ?? stone;
        const cell = toReviewCell(
          { studentId, exerciseStoneId },
          sitting,
          scales,
          sat.clarity ?? undefined,
          sat.isBlind,
        );
        const earlier = attempts.slice(0, -1).map((one) => ({
          sittingId: one.id,
          state: toCellState(one),
          label: satOn.get(one.exerciseStoneId)?.label ?? stone.label,
        }));
        return { ...cell, earlier, retakeOn: sat === stone || sat.label === stone.label ? null : sat.label };
      }),
    ),
  });
}
