import type { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { runInTransaction } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { DEFAULT_TERMS, TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { parseInput } from "@/lib/plot/parse-input";
import { TrayTextSchema } from "@/lib/plot/tray-text";

/** Makes an empty tray, the viewer's own. Throws AppError `not-allowed` or `bad-input`. */
export async function createTray(
  viewer: Viewer,
  input: z.input<typeof TrayTextSchema>,
): Promise<{ trayId: string }> {
  requireRole(viewer, "make-tray");
  const { name, notes } = parseInput(TrayTextSchema, input);
  return runInTransaction(async (transaction) => {
    const terms = toColumn(TrayTermsSchema, DEFAULT_TERMS);
    const tray = await transaction.tray.create({ data: { name, notes, ownerId: viewer.userId, terms } });
    await writeTrail(transaction, viewer, {
      action: "create-tray",
      subjectKind: "tray",
      subjectId: tray.id,
      detail: name,
    });
    return { trayId: tray.id };
  });
}
