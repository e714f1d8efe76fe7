import type { Transaction } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { ProgramSettingsSchema, type ProgramSettingsView } from "@/lib/plot/program-settings";
import { DEFAULT_RUBRIC } from "@/lib/plot/rubric";

/** The id of the one row. */
export const PROGRAM_SETTINGS_ID = "program";

/** What holds for the whole program: Loupework's own numbers, at revision 0, until a director changes something. */
export async function findProgramSettings(
  database: Pick<Transaction, "programSettings">,
): Promise<ProgramSettingsView> {
  const row = await database.programSettings.findUnique({
    where: { id: PROGRAM_SETTINGS_ID },
    include: { changedBy: { select: { name: true } } },
  });
  if (row === null) return { revision: 0, rubric: DEFAULT_RUBRIC, changed: null };
  const { rubric } = parseColumn(ProgramSettingsSchema, row.body, "ProgramSettings.body");
  return {
    revision: row.revision,
    rubric: rubric ?? DEFAULT_RUBRIC,
    changed: { byName: row.changedBy.name, at: row.changedAt.toISOString() },
  };
}
