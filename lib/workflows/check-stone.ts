import { z } from "zod";
import { refuseAsNotFound, requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase, runInTransaction } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { StoneBodySchema } from "@/lib/plot/stone";
import { StoneEvidenceSchema, type StoneVerdict, StoneVerdictSchema } from "@/lib/plot/stone-check";
import {
  findTrayToJudge,
  judgeEvidence,
  requireSoundEvidence,
} from "@/lib/workflows/stone-check/judge-evidence";

const InputSchema = z.strictObject({
  trayId: z.string(),
  /** What the label says; null where it is gone. */
  stoneId: z.string().nullable(),
  evidence: StoneEvidenceSchema,
});

/**
 * The hand-in check by staff: which stone of the tray this is, kept with the tray so that a mismatch stands there until it is
 * settled. Throws AppError `not-allowed`, `not-found`, `reading-blind`, or `bad-input` for features that are off the stone.
 */
export async function checkStone(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ checkId: string; verdict: StoneVerdict }> {
  requireRole(viewer, "check-stone");
  const { trayId, stoneId, evidence } = parseInput(InputSchema, input);
  const tray = requireAccess(viewer, "check-stone", await findTrayToJudge(getDatabase(), trayId));
  await requireUnblinded(
    viewer,
    tray.stones.map(({ id }) => id),
  );
  const labelled = tray.stones.find(({ id }) => id === stoneId);
  if (stoneId !== null && labelled === undefined) throw refuseAsNotFound();
  const body =
    labelled === undefined
      ? StoneBodySchema.parse({ cut: evidence.cut })
      : parseColumn(StoneBodySchema, labelled.body, "Stone.body");
  requireSoundEvidence(evidence, { ...body, cut: evidence.cut }, tray.terms);
  const verdict = judgeEvidence(tray, evidence, stoneId);
  return runInTransaction(async (transaction) => {
    const check = await transaction.stoneCheck.create({
      data: {
        trayId,
        stoneId,
        byId: viewer.userId,
        evidence: toColumn(StoneEvidenceSchema, evidence),
        verdict: toColumn(StoneVerdictSchema, verdict),
        outcome: verdict.outcome,
        judgedAt: new Date(),
      },
    });
    await writeTrail(transaction, viewer, { action: "check-stone", subjectKind: "tray", subjectId: trayId });
    return { checkId: check.id, verdict };
  });
}
