import { getDatabase, runInTransaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { StoneEvidenceSchema, StoneVerdictSchema } from "@/lib/plot/stone-check";
import { findTrayToJudge, judgeEvidence } from "@/lib/workflows/stone-check/judge-evidence";

/**
 * Works out every check that a student sent and that has no verdict yet: after one was answered, and before staff read
 * a tray's checks. One that fails is told to the log by its id, and the rest go on. Gives how many were worked out.
 */
export async function judgeStoneChecks(): Promise<number> {
  const database = getDatabase();
  const open = await database.stoneCheck.findMany({ where: { judgedAt: null } });
  let judged = 0;
  for (const { id, trayId, stoneId, evidence } of open) {
    try {
      const tray = await findTrayToJudge(database, trayId);
      if (tray === null) continue;
      const read = parseColumn(StoneEvidenceSchema, evidence, "StoneCheck.evidence");
      const verdict = judgeEvidence(tray, read, stoneId);
      await runInTransaction((transaction) =>
        transaction.stoneCheck.update({
          where: { id },
          data: {
            verdict: toColumn(StoneVerdictSchema, verdict),
            outcome: verdict.outcome,
            judgedAt: new Date(),
          },
        }),
      );
      judged += 1;
    } catch (thrown) {
      console.error(`the check ${id} could not be worked out`, thrown);
    }
  }
  return judged;
}
