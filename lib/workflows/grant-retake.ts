import { isDeepStrictEqual } from "node:util";
import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import type { ExerciseWithParts } from "@/lib/data/store/find-exercise";
import { getRetakeGround } from "@/lib/data/store/find-retake-ground";
import { parseColumn } from "@/lib/data/store/parse-column";
import { resolveExerciseStones } from "@/lib/data/store/resolve-exercise-stones";
import { writeTrail } from "@/lib/data/store/write-trail";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({
  exerciseId: z.string(),
  /** The stone of the exercise that the retake is of. */
  exerciseStoneId: z.string(),
  studentId: z.string(),
  /** The stone to sit in its place; null: the same again. */
  stoneId: z.string().nullable(),
  /** For staff alone. */
  reason: z.string().trim().max(500).default(""),
});

/** The exercise's own row for a stone of a retake; made where no retake was on it before. */
async function ensurePlace(
  transaction: Transaction,
  exercise: ExerciseWithParts,
  stoneId: string,
): Promise<string> {
  const known = exercise.stones.find((one) => one.stoneId === stoneId);
  if (known?.isRetake === false) {
    throw new AppError("conflict", "That stone is set for the student in this exercise already.");
  }
  if (known !== undefined) return known.id;
  const { terms } = await resolveExerciseStones(transaction, [
    stoneId,
    ...exercise.stones.map((one) => one.stoneId),
  ]);
  const stone = await transaction.stone.findUnique({
    where: { id: stoneId },
    include: { references: { take: 1, select: { id: true } } },
  });
  const isFit =
    stone !== null &&
    stone.references.length > 0 &&
    isDeepStrictEqual(terms, parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms"));
  if (!isFit) {
    throw new AppError("bad-input", "The retake was not granted.", [
      { path: "stoneId", message: "is no stone with a reference under the exercise’s own scales" },
    ]);
  }
  const position = Math.max(0, ...exercise.stones.map((one) => one.position)) + 1;
  const made = await transaction.exerciseStone.create({
    data: { exerciseId: exercise.id, stoneId, position, isRetake: true },
  });
  return made.id;
}

/** Refuses a second retake of a stone while the first waits or is on the bench. */
async function requireNoneWaiting(
  transaction: Transaction,
  { exerciseStoneId, studentId }: { exerciseStoneId: string; studentId: string },
): Promise<void> {
  const latest = await transaction.retake.findFirst({
    where: { replacesId: exerciseStoneId, studentId },
    orderBy: { grantedAt: "desc" },
  });
  if (latest === null) return;
  const used = await transaction.sitting.count({
    where: {
      exerciseStoneId: latest.exerciseStoneId,
      studentId,
      openedAt: { gte: latest.grantedAt },
      handIn: { isNot: null },
    },
  });
  if (used > 0) return;
  throw new AppError("conflict", "The student has a retake of this stone already that is not handed in yet.");
}

/**
 * Grants one student a retake of a stone that they handed in: on it again, or on another stone under the same scales in its
 * place, which then is in the exercise for them alone. The latest attempt counts. Throws AppError `not-allowed`,
 * `not-found`, `bad-input`, or `conflict`.
 */
export async function grantRetake(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ retakeId: string }> {
  requireRole(viewer, "grant-allowance");
  const parsed = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const { exercise, place, studentName } = await getRetakeGround(transaction, viewer, parsed);
    await requireNoneWaiting(transaction, parsed);
    const { studentId, stoneId, reason } = parsed;
    const isSame = stoneId === null || stoneId === place.stoneId;
    const exerciseStoneId = isSame ? place.id : await ensurePlace(transaction, exercise, stoneId);
    const made = await transaction.retake.create({
      data: { exerciseStoneId, replacesId: place.id, studentId, reason, grantedById: viewer.userId },
    });
    await writeTrail(transaction, viewer, {
      action: "grant-retake",
      subjectKind: "exercise",
      subjectId: exercise.id,
      detail: `${studentName}: ${place.stone.label}${isSame ? " again" : ", on another stone"}`,
    });
    return { retakeId: made.id };
  });
}
