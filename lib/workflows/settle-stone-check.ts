import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({ checkId: z.string() });

/**
 * Says that somebody has looked after a check, so that it is no longer flagged. Throws AppError `not-allowed`,
 * `not-found`, or `conflict` where somebody else has settled it.
 */
export async function settleStoneCheck(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "check-stone");
  const { checkId } = parseInput(InputSchema, input);
  await runInTransaction(async (transaction) => {
    const found = await transaction.stoneCheck.findUnique({
      where: { id: checkId },
      include: { settledBy: { select: { name: true } } },
    });
    const { settledBy, trayId } = requireAccess(
      viewer,
      "check-stone",
      found === null ? null : { ...found, ownerId: found.byId },
    );
    if (settledBy !== null) {
      throw new AppError("conflict", `${settledBy.name} has settled this check already.`);
    }
    await transaction.stoneCheck.update({
      where: { id: checkId },
      data: { settledAt: new Date(), settledById: viewer.userId },
    });
    await writeTrail(transaction, viewer, {
      action: "settle-stone-check",
      subjectKind: "tray",
      subjectId: trayId,
    });
  });
}
