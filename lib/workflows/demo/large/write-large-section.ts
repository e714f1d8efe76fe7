import { randomUUID } from "node:crypto";
import type { Transaction } from "@/lib/data/store/database";
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
  simulateExercise,
} from "@/lib/workflows/demo/large/simulate-exercise";

const DAY_MS = 86_400_000;

interface SectionPeople {
  readonly instructorId: string;
  readonly students: readonly LargeStudent[];
}

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
  return rows.map(({ id, login }) => ({ userId: id, login }));
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
  rows: ReturnType<typeof simulateExercise>,
  releasedBy: string | null,
  releasedAt: Date,
): Promise<void> {
  await transaction.sitting.createMany({ data: rows.map(({ sitting }) => sitting) });
  await transaction.handIn.createMany({ data: rows.map(({ handIn }) => handIn) });
  await transaction.result.createMany({ data: rows.map(({ result }) => result) });
  await transaction.resultTally.createMany({ data: rows.map(({ tally }) => tally) });
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
): Promise<{ exerciseIds: string[]; sittings: number }> {
  const students = await writeStudents(transaction, section, passwordHash);
  const people: SectionPeople = { instructorId, students };
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
    const rows = simulateExercise(tray, exercise, week, people.students, ids);
    const releasedAt = new Date(exercise.dueAt.getTime() + 2 * DAY_MS);
    await writeSittings(transaction, rows, exercise.isReleased ? instructorId : null, releasedAt);
    exerciseIds.push(ids.exerciseId);
    sittings += rows.length;
  }
  return { exerciseIds, sittings };
}
