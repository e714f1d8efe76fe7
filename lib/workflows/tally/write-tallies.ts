import { CountsSchema } from "@/lib/agreement/counts-schema";
import type { Transaction } from "@/lib/data/store/database";
import { listResultsToCount } from "@/lib/data/store/list-results-to-count";
import { toColumn } from "@/lib/data/store/to-column";
import { MarkOutcomeSchema } from "@/lib/plot/result-tally";
import { CountingGround, countResult } from "@/lib/workflows/tally/count-result";

/** So many results are counted at once. */
const BATCH = 200;

/** Drops the sums of exercises: whoever reads them next makes them again. */
async function dropSums(transaction: Transaction, exerciseIds: readonly string[]): Promise<void> {
  await transaction.tallySum.deleteMany({ where: { exerciseId: { in: [...exerciseIds] } } });
}

/**
 * Counts current results and keeps a tally of each; call it in the transaction that puts them in force. The tally of
 * an earlier result of the same sitting goes, and so do the sums of the exercises.
 */
export async function writeTallies(transaction: Transaction, resultIds: readonly string[]): Promise<void> {
  const ground = new CountingGround();
  const touched = new Set<string>();
  for (let from = 0; from < resultIds.length; from += BATCH) {
    const rows = await listResultsToCount(transaction, resultIds.slice(from, from + BATCH));
    await transaction.resultTally.deleteMany({
      where: { sittingId: { in: rows.map(({ handIn }) => handIn.sitting.id) } },
    });
    await transaction.resultTally.createMany({
      data: rows.map((row) => {
        const { handedInAt, sitting } = row.handIn;
        const { counts, outcome, clarityGap } = countResult(ground, row);
        touched.add(sitting.exerciseStone.exerciseId);
        return {
          resultId: row.id,
          sittingId: sitting.id,
          exerciseId: sitting.exerciseStone.exerciseId,
          exerciseStoneId: sitting.exerciseStone.id,
          studentId: sitting.studentId,
          attempt: sitting.attempt,
          handedInAt,
          totalHundredths: row.totalHundredths,
          clarityGap,
          counts: toColumn(CountsSchema, counts),
          outcome: toColumn(MarkOutcomeSchema, outcome),
        };
      }),
    });
  }
  await dropSums(transaction, [...touched]);
}
