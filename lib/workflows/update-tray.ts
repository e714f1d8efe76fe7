import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction } from "@/lib/data/store/database";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import { TrayTextSchema } from "@/lib/plot/tray-text";

const InputSchema = z.strictObject({ trayId: z.string(), ...TrayTextSchema.shape });

/** Changes a tray's name and notes. Throws AppError `not-allowed`, `not-found` or `bad-input`. */
export async function updateTray(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<void> {
  requireRole(viewer, "edit-tray");
  const { trayId, name, notes } = parseInput(InputSchema, input);
  await runInTransaction(async (transaction) => {
    requireAccess(viewer, "edit-tray", await transaction.tray.findUnique({ where: { id: trayId } }));
    await transaction.tray.update({ where: { id: trayId }, data: { name, notes } });
    await writeTrail(transaction, viewer, {
      action: "update-tray",
      subjectKind: "tray",
      subjectId: trayId,
      detail: name,
    });
  });
}
