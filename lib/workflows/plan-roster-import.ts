import type { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { planRoster } from "@/lib/exchange/plan-roster";
import { readRoster } from "@/lib/exchange/read-roster";
import { parseInput } from "@/lib/plot/parse-input";
import { type RosterPlan, RosterPlanSchema } from "@/lib/plot/roster";
import {
  RosterInputSchema,
  readRosterGround,
  toRosterFingerprint,
} from "@/lib/workflows/roster/read-roster-ground";

/**
 * The dry run of a roster: who would be added, changed, left as they are or refused, with file, row and column. Writes
 * nothing. Throws AppError `not-allowed`, or `bad-input` for files that are no roster at all.
 */
export async function planRosterImport(
  viewer: Viewer,
  input: z.input<typeof RosterInputSchema>,
): Promise<RosterPlan> {
  requireRole(viewer, "manage-people");
  const parsed = parseInput(RosterInputSchema, input);
  const roster = readRoster(parsed.files);
  const ground = await readRosterGround(
    getDatabase(),
    roster.people.map(({ login }) => login),
  );
  const { rows, sections, faults } = planRoster(roster, ground, parsed.termOfNew);
  const fingerprint = toRosterFingerprint(parsed, ground);
  return RosterPlanSchema.parse({ form: roster.form, rows, sections, faults, fingerprint });
}
