import { randomUUID } from "node:crypto";
import { createSeededRandom } from "@/lib/base/seeded-random";
import type { Transaction } from "@/lib/data/store/database";
import { insertRows } from "@/lib/data/store/insert-rows";
import { toColumn } from "@/lib/data/store/to-column";
import {
  LARGE_PROGRAM,
  type LargeExercise,
  type LargeSection,
  planLargeExercises,
} from "@/lib/demo/large-program";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { DEFAULT_TERMS, ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { DEFAULT_RUBRIC, RubricSchema } from "@/lib/plot/rubric";
import type { LargeTray } from "@/lib/workflows/demo/large/large-trays";
import {
  type ExerciseIds,
  type LargeStudent,
  layOutExercise,
  type PlotPool,
} from "@/lib/workflows/demo/large/simulate-exercise";

const DAY_MS = 86_400_000;

/** The students of a section; they sign in as `large-07-12`, with everybody's password. */
async function writeStudents(transaction: Transaction, section: LargeSection, passwordHash: string) {
  const number = String(section.index + 1).padStart(2, "0");
  const rows = Array.from({ length: LARGE_PROGRAM.studentsPerSection }, (_, i) => {
    const place = String(i + 1).padStart(2, "0");
    return {
      id: randomUUID(),
      login: `large-${number}-${place}`,
      name: `Student ${number}-${place}`,
      role: "student" as const,
      passwordHash,
      createdAt: section.startsAt,
    };
  });
  await transaction.user.createMany({ data: rows });
  const random = createSeededRandom(`large/${section.name}`);
  return rows.map(({ id }): LargeStudent => {
    return { userId: id, double: Math.floor(random.next() * LARGE_PROGRAM.studentsPerSection) };
  });
}

async function writeExercise(
  transaction: Transaction,
  exercise: LargeExercise,
  tray: LargeTray,
  sectionId: string,
  authorId: string,
): Promise<ExerciseIds> {
  const { title, opensAt, dueAt } = exercise;
  const createdAt = new Date(opensAt.getTime() - DAY_MS);
  const [exerciseId, rubricVersionId] = [randomUUID(), randomUUID()];
  await transaction.exercise.create({
    data: {
      id: exerciseId,
      sectionId,
      title,
      opensAt,
      dueAt,
      closesAt: new Date(dueAt.getTime() + DAY_MS),
      rules: toColumn(ExerciseRulesSchema, { preparation: "asked", schoolRules: "" }),
      terms: toColumn(ExerciseTermsSchema, { scales: DEFAULT_TERMS.scales, characteristics: [] }),
      authorId,
      createdAt,
      rubrics: {
        create: {
          id: rubricVersionId,
          version: 1,
          body: toColumn(RubricSchema, DEFAULT_RUBRIC),
          authorId,
          createdAt,
        },
      },
    },
  });
  const places = tray.stones.map(({ stoneId }, index) => ({
    id: randomUUID(),
    exerciseId,
    stoneId,
    position: index + 1,
  }));
  await transaction.exerciseStone.createMany({ data: places });
  return { exerciseId, rubricVersionId, exerciseStoneIds: places.map(({ id }) => id) };
}

async function writeSittings(
  transaction: Transaction,
  rows: ReturnType<typeof layOutExercise>,
  releasedBy: string | null,
  releasedAt: Date,
): Promise<void> {
  await insertRows(
    transaction,
    "Sitting",
    rows.map(({ sitting }) => sitting),
  );
  await insertRows(
    transaction,
    "HandIn",
    rows.map(({ handIn }) => handIn),
  );
  await insertRows(
    transaction,
    "Result",
    rows.map(({ result }) => result),
  );
  await insertRows(
    transaction,
    "ResultTally",
    rows.map(({ tally }) => tally),
  );
  if (releasedBy === null) return;
  await transaction.release.createMany({
    data: rows.map(({ sitting }) => ({ sittingId: sitting.id, releasedById: releasedBy, releasedAt })),
  });
}

/** A section with its students, exercises, and everyone's sittings; gives the exercises' ids and how many sittings. */
export async function writeLargeSection(
  transaction: Transaction,
  section: LargeSection,
  trays: readonly LargeTray[],
  { instructorId, passwordHash }: { readonly instructorId: string; readonly passwordHash: string },
  getPool: (tray: number, week: number) => PlotPool,
): Promise<{ exerciseIds: string[]; sittings: number }> {
  const students = await writeStudents(transaction, section, passwordHash);
  const { id: sectionId } = await transaction.section.create({
    data: {
      name: section.name,
      term: section.term,
      createdAt: section.startsAt,
      instructors: { create: { instructorId } },
      enrolments: { create: students.map(({ userId }) => ({ studentId: userId })) },
    },
  });
  const exerciseIds: string[] = [];
  let sittings = 0;
  for (const [week, exercise] of planLargeExercises(section).entries()) {
    const tray = trays[exercise.tray];
    if (tray === undefined) throw new RangeError(`writeLargeSection: no tray ${exercise.tray}`);
    const ids = await writeExercise(transaction, exercise, tray, sectionId, instructorId);
    const rows = layOutExercise(tray, exercise, students, getPool(exercise.tray, week), ids);
    const releasedAt = new Date(exercise.dueAt.getTime() + 2 * DAY_MS);
    await writeSittings(transaction, rows, exercise.isReleased ? instructorId : null, releasedAt);
    exerciseIds.push(ids.exerciseId);
    sittings += rows.length;
  }
  return { exerciseIds, sittings };
}
