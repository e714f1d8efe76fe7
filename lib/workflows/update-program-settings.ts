import { isDeepStrictEqual } from "node:util";
import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { findProgramSettings, PROGRAM_SETTINGS_ID } from "@/lib/data/store/find-program-settings";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { listRubricChanges, toRubricChangeLine } from "@/lib/plot/list-rubric-changes";
import { parseInput } from "@/lib/plot/parse-input";
import { ProgramSettingsSchema } from "@/lib/plot/program-settings";
import { DEFAULT_RUBRIC, findRubricFaults, RubricSchema } from "@/lib/plot/rubric";

const InputSchema = z.strictObject({
  /** The revision that the change was made from; 0 for the first. */
  baseRevision: z.int().min(0),
  rubric: RubricSchema,
});

/**
 * Changes what a new exercise starts with. Exercises that are set keep their rubric, and results their points. The trail
 * says what was changed from what to what. What says the same as before writes nothing. Throws AppError `not-allowed`,
 * `not-found` for a student, `bad-input` with faults under `rubric`, or `conflict` when somebody else changed it first.
 */
export async function updateProgramSettings(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ revision: number }> {
  requireRole(viewer, "change-settings");
  const { baseRevision, rubric } = parseInput(InputSchema, input);
  const faults = findRubricFaults(rubric).map(({ path, message }) => ({ path: `rubric.${path}`, message }));
  if (faults.length > 0) throw new AppError("bad-input", "The defaults were not changed.", faults);
  return runInTransaction(async (transaction) => {
    const before = await findProgramSettings(transaction);
    if (before.revision !== baseRevision) {
      throw new AppError("conflict", "Somebody else changed the defaults meanwhile; nothing was written.");
    }
    const changes = listRubricChanges(before.rubric, rubric);
    if (changes.length === 0) return { revision: before.revision };
    const row = {
      body: toColumn(ProgramSettingsSchema, {
        rubric: isDeepStrictEqual(rubric, DEFAULT_RUBRIC) ? null : rubric,
      }),
      revision: before.revision + 1,
      changedById: viewer.userId,
      changedAt: new Date(),
    };
    await transaction.programSettings.upsert({
      where: { id: PROGRAM_SETTINGS_ID },
      create: { id: PROGRAM_SETTINGS_ID, ...row },
      update: row,
    });
    await writeTrail(transaction, viewer, {
      action: "update-program-settings",
      subjectKind: "program",
      subjectId: PROGRAM_SETTINGS_ID,
      detail: `Rubric defaults. ${toRubricChangeLine(changes)}`,
    });
    return { revision: row.revision };
  });
}
