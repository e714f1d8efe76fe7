import type { Transaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { arrangeOwnPlaces } from "@/lib/plot/arrange-own-places";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import type { Prisma } from "@/prisma/generated/client";

/** The stones of an exercise that are a student's: those set for the section, and those of a retake of their own. */
export const whereOwnPlaces = (studentId: string) =>
  ({
    OR: [{ isRetake: false }, { retakes: { some: { studentId } } }],
  }) satisfies Prisma.ExerciseStoneWhereInput;

/** The stones of an exercise that have opened, where the exercise itself has. */
export const whereStoneOpened = (now: Date) =>
  ({ OR: [{ opensAt: null }, { opensAt: { lte: now } }] }) satisfies Prisma.ExerciseStoneWhereInput;

/** What the stone is called to one student, and what that hangs on. */
export interface LabelledPlace {
  readonly id: string;
  readonly exerciseId: string;
  readonly stone: { readonly label: string };
  readonly exercise: { readonly rules: unknown };
}

/** What a stone of an exercise is called to one student: its label, unless the exercise hides it. */
export async function findOwnLabel(
  database: Transaction,
  place: LabelledPlace,
  studentId: string,
): Promise<string> {
  const rules = parseColumn(ExerciseRulesSchema, place.exercise.rules, "Exercise.rules");
  if (!rules.areLabelsHidden) return place.stone.label;
  const places = await database.exerciseStone.findMany({
    where: { exerciseId: place.exerciseId, ...whereOwnPlaces(studentId) },
    select: { id: true, position: true, isRetake: true, opensAt: true, stone: { select: { label: true } } },
  });
  const own = arrangeOwnPlaces(places, true, studentId).find((one) => one.place.id === place.id);
  // A stone that is no longer the student's keeps its sitting: it has no number, and still no label.
  return own?.label ?? "Stone";
}
