/** The result of a sitting by the overrules in force, in the transaction that changes them. */
import { AppError } from "@/lib/base/app-error";
import type { Transaction } from "@/lib/data/store/database";
import { listOverrules } from "@/lib/data/store/list-overrules";
import {
  type ExerciseToScore,
  readScoringGround,
  type ScoringGround,
  scoreOnGround,
  toResultColumns,
} from "@/lib/workflows/scoring/scoring-ground";
import { writeTallies } from "@/lib/workflows/tally/write-tallies";

const LATEST = { orderBy: { version: "desc" }, take: 1 } as const;

async function readHandIn(transaction: Transaction, sittingId: string) {
  return transaction.handIn.findUniqueOrThrow({
    where: { sittingId },
    include: {
      results: { where: { isCurrent: true }, include: { reference: true, rubricVersion: true } },
      sitting: {
        include: {
          student: { select: { login: true } },
          exerciseStone: {
            include: {
              exercise: {
                include: {
                  rubrics: LATEST,
                  rescores: { where: { state: { in: ["working", "ready"] } }, select: { id: true } },
                  stones: {
                    orderBy: { position: "asc" },
                    include: { stone: { include: { references: LATEST } } },
                  },
                },
              },
            },
          },
        },
      },
    },
  });
}
type HandInRow = Awaited<ReturnType<typeof readHandIn>>;

/** What the current result was scored by: its own rubric and reference, and the stone's body if that is still the same. */
function readGroundOf({ results, sitting }: HandInRow): ScoringGround {
  const [current] = results;
  const { exercise, id } = sitting.exerciseStone;
  const own = exercise.stones.find((one) => one.id === id);
  if (current === undefined || own === undefined) throw new Error("a review without a result");
  if (current.stoneRevision !== own.stone.revision) {
    throw new AppError(
      "conflict",
      "The stone was changed after this was scored. Rescore the exercise first; then it can be overruled.",
    );
  }
  const ground: ExerciseToScore = {
    terms: exercise.terms,
    rubrics: [current.rubricVersion],
    stones: exercise.stones.map((one) =>
      one.id === id ? { id, stone: { ...one.stone, references: [current.reference] } } : one,
    ),
  };
  return readScoringGround(ground);
}

async function scoreRow(transaction: Transaction, row: HandInRow, ground: ScoringGround) {
  const { id: sittingId, student, exerciseStone } = row.sitting;
  const ruled = (await listOverrules(transaction, [sittingId])).get(sittingId);
  const scored = scoreOnGround(ground, exerciseStone.id, {
    plot: row.plot,
    login: student.login,
    overrules: ruled?.overrules ?? [],
  });
  if (scored === null) throw new Error("a result on a stone without a reference");
  return toResultColumns(ground, exerciseStone.id, scored, ruled?.reviewRevision ?? 0);
}

/** A rescore that waits to be applied keeps up, so that what is looked at is what would be applied. */
async function followInRescores(transaction: Transaction, row: HandInRow): Promise<void> {
  const { exercise } = row.sitting.exerciseStone;
  for (const { id: rescoreId } of exercise.rescores) {
    const waiting = await transaction.result.findFirst({ where: { rescoreId, handInId: row.id } });
    if (waiting === null) continue;
    const data = await scoreRow(transaction, row, readScoringGround(exercise));
    await transaction.result.update({ where: { id: waiting.id }, data });
  }
}

/**
 * Scores a sitting by its overrules in force and puts that result in force with its tally; the one before is kept. By the
 * reference and the rubric of the result that stands, so that an overrule is no rescore. Throws AppError `conflict` where the
 * stone's body is another by now.
 */
export async function overruleResult(transaction: Transaction, sittingId: string): Promise<void> {
  const row = await readHandIn(transaction, sittingId);
  const columns = await scoreRow(transaction, row, readGroundOf(row));
  await transaction.result.updateMany({
    where: { handInId: row.id, isCurrent: true },
    data: { isCurrent: false },
  });
  const { id } = await transaction.result.create({ data: { handInId: row.id, ...columns } });
  await writeTallies(transaction, [id]);
  await followInRescores(transaction, row);
}
