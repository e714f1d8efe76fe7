import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { findSolid } from "@/lib/plot/find-plot-faults";
import { IdSchema } from "@/lib/plot/mark";
import { parseInput } from "@/lib/plot/parse-input";
import { StoneBodySchema } from "@/lib/plot/stone";

const InputSchema = z.strictObject({ trayId: z.string(), label: IdSchema, body: StoneBodySchema });

/**
 * Adds a stone at the end of a tray. Throws AppError `not-allowed`, `not-found`, `bad-input` for proportions that make
 * no stone, or `conflict` for a label that the tray has already.
 */
export async function createStone(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ stoneId: string }> {
  requireRole(viewer, "edit-tray");
  const { trayId, label, body } = parseInput(InputSchema, input);
  const { faults } = findSolid(body, "body");
  return runInTransaction(async (transaction) => {
    const tray = await transaction.tray.findUnique({
      where: { id: trayId },
      include: { stones: { select: { label: true, position: true } } },
    });
    const { stones } = requireAccess(viewer, "edit-tray", tray);
    if (faults.length > 0) throw new AppError("bad-input", "These proportions make no stone.", faults);
    if (stones.some((stone) => stone.label === label)) {
      throw new AppError("conflict", `The tray has a stone “${label}” already.`, [
        { path: "label", message: "is taken" },
      ]);
    }
    const position = Math.max(0, ...stones.map((stone) => stone.position)) + 1;
    const stone = await transaction.stone.create({
      data: { trayId, label, position, body: toColumn(StoneBodySchema, body) },
    });
    await writeTrail(transaction, viewer, {
      action: "create-stone",
      subjectKind: "stone",
      subjectId: stone.id,
      detail: label,
    });
    return { stoneId: stone.id };
  });
}
