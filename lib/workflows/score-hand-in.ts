import { getDatabase, runInTransaction } from "@/lib/data/store/database";
import { findHandIn, isScoringDue } from "@/lib/data/store/find-hand-in";
import { readScoringGround, scoreOnGround, toResultColumns } from "@/lib/workflows/scoring/scoring-ground";
import { writeTallies } from "@/lib/workflows/tally/write-tallies";

/**
 * Scores one hand-in by the latest reference and rubric, and keeps the result with what it was scored by. Called by the
 * program itself, after a hand-in was answered and by the sweep; nothing is done where there is a result already, which
 * only a rescore that staff apply replaces, or where the stone has no reference yet. Gives whether a result was written.
 */
export async function scoreHandIn(handInId: string): Promise<boolean> {
  const handIn = await findHandIn(getDatabase(), handInId);
  if (handIn === null || !isScoringDue(handIn)) return false;
  const { student, exerciseStone } = handIn.sitting;
  const ground = readScoringGround(exerciseStone.exercise);
  const scored = scoreOnGround(ground, exerciseStone.id, {
    plot: handIn.plot,
    login: student.login,
    // Only what is scored can be overruled, so there are none yet.
    overrules: [],
  });
  if (scored === null) return false;
  return runInTransaction(async (transaction) => {
    const still = await findHandIn(transaction, handInId);
    if (still === null || !isScoringDue(still)) return false;
    const { id } = await transaction.result.create({
      data: { handInId, ...toResultColumns(ground, exerciseStone.id, scored, 0) },
    });
    await writeTallies(transaction, [id]);
    return true;
  });
}
