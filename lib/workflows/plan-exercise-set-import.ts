import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { parseInput } from "@/lib/plot/parse-input";
import type { SetImportPlan } from "@/lib/plot/set-import";
import { TrayTextSchema } from "@/lib/plot/tray-text";
import { makeSetImportPlan, readTrayGround } from "@/lib/workflows/set-import/read-tray-ground";

const InputSchema = z.strictObject({
  /** An exercise set, parsed from its file but not checked yet. */
  json: z.unknown(),
  /** The tray that takes the stones; a new one is made where it is null. */
  trayId: z.string().nullable().default(null),
  /** What a new tray is called. */
  trayName: TrayTextSchema.shape.name,
});

/**
 * The dry run of an import: what would be made, changed or left as it is, and every fault with its path. Writes
 * nothing. Throws AppError `not-allowed`, `not-found`, `reading-blind`, or `bad-input` for a name that no tray can have.
 */
export async function planExerciseSetImport(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<SetImportPlan> {
  requireRole(viewer, "make-tray");
  const { json, trayId, trayName } = parseInput(InputSchema, input);
  const tray = trayId === null ? null : await readTrayGround(getDatabase(), viewer, trayId);
  return makeSetImportPlan(json, trayName, tray);
}
