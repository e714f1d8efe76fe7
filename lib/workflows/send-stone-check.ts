import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { findExerciseStone } from "@/lib/data/store/find-exercise-stone";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { StoneBodySchema } from "@/lib/plot/stone";
import { StoneEvidenceSchema } from "@/lib/plot/stone-check";
import { requireSoundEvidence } from "@/lib/workflows/stone-check/judge-evidence";

const InputSchema = z.strictObject({
  exerciseStoneId: z.string(),
  evidence: StoneEvidenceSchema.omit({ cut: true }),
});

/** A student's checks of one stone in an hour, at most. */
const MOST_AN_HOUR = 10;
const HOUR_MS = 3_600_000;

/**
 * Keeps what a student saw of the stone in hand, for their instructor. The answer is the same whatever stone it is, and
 * the verdict is worked out after it was given: whether a feature is in the reference cannot be tried out here.
 * Throws AppError `not-found`, `bad-input`, or `too-many-attempts`.
 */
export async function sendStoneCheck(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ checkId: string }> {
  requireRole(viewer, "send-stone-check");
  const { exerciseStoneId, evidence } = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const found = await findExerciseStone(transaction, exerciseStoneId);
    const { row } = requireAccess(viewer, "send-stone-check", found);
    const { id: stoneId, trayId } = row.stone;
    const recent = await transaction.stoneCheck.count({
      where: { byId: viewer.userId, stoneId, madeAt: { gt: new Date(Date.now() - HOUR_MS) } },
    });
    if (recent >= MOST_AN_HOUR) {
      throw new AppError("too-many-attempts", "That is enough checks of this stone for an hour.");
    }
    const body = parseColumn(StoneBodySchema, row.stone.body, "Stone.body");
    const whole = { ...evidence, cut: body.cut };
    const tray = await transaction.tray.findUniqueOrThrow({ where: { id: trayId }, select: { terms: true } });
    requireSoundEvidence(whole, body, tray.terms);
    const check = await transaction.stoneCheck.create({
      data: { trayId, stoneId, byId: viewer.userId, evidence: toColumn(StoneEvidenceSchema, whole) },
    });
    await writeTrail(transaction, viewer, { action: "check-stone", subjectKind: "tray", subjectId: trayId });
    return { checkId: check.id };
  });
}
