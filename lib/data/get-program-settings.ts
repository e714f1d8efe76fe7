import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findProgramSettings } from "@/lib/data/store/find-program-settings";
import { type ProgramSettingsView, ProgramSettingsViewSchema } from "@/lib/plot/program-settings";

/** What holds for the whole program, for a director to change. Throws AppError `not-allowed` or `not-found`. */
export async function getProgramSettings(viewer: Viewer): Promise<ProgramSettingsView> {
  requireRole(viewer, "change-settings");
  return ProgramSettingsViewSchema.parse(await findProgramSettings(getDatabase()));
}
