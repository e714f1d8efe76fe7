import { z } from "zod";
import { refuseAsNotFound, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { StoneIdsSchema } from "@/lib/plot/hand-out";
import { parseInput } from "@/lib/plot/parse-input";

const InputSchema = z.strictObject({ stoneIds: StoneIdsSchema });

/**
 * Takes stones back into their trays; one that is in its tray already stays there. Throws AppError `not-allowed`,
 * `not-found` for a stone that is none, or `conflict` where not one of them is out.
 */
export async function takeBackStones(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ takenBack: number }> {
  requireRole(viewer, "hand-out-stone");
  const { stoneIds } = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const known = await transaction.stone.count({ where: { id: { in: stoneIds } } });
    if (known !== stoneIds.length) throw refuseAsNotFound();
    const out = await transaction.handOut.findMany({
      where: { stoneId: { in: stoneIds }, returnedAt: null },
      select: { id: true, stoneId: true },
    });
    if (out.length === 0) {
      throw new AppError(
        "conflict",
        stoneIds.length === 1 ? "This stone is in its tray." : "These stones are in their trays.",
      );
    }
    await transaction.handOut.updateMany({
      where: { id: { in: out.map(({ id }) => id) } },
      data: { returnedAt: new Date(), returnedById: viewer.userId },
    });
    const notes = out.map(({ stoneId }) => ({
      action: "take-back-stone",
      subjectKind: "stone",
      subjectId: stoneId,
    }));
    await writeTrail(transaction, viewer, ...notes);
    return { takenBack: out.length };
  });
}
