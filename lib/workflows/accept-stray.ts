import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { getDatabase } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { findSitting } from "@/lib/data/store/find-sitting";
import { findStone } from "@/lib/data/store/find-stone";
import { parseColumn } from "@/lib/data/store/parse-column";
import { type AcceptStray, AcceptStraySchema, takeStrayIn } from "@/lib/plot/accept-stray";
import { parseInput } from "@/lib/plot/parse-input";
import { PlotSchema } from "@/lib/plot/plots-file";
import { ScoreResultSchema } from "@/lib/plot/score-result";
import { ReferenceSchema } from "@/lib/plot/stone";
import { saveReference } from "@/lib/workflows/save-reference";

const NOTE = "Taken in from a stray, at review.";

/**
 * Takes a stray of a plot into its stone's reference, as a mark or a decoy of a new version; results stay until staff
 * rescore. Asks for the review of the sitting and for the stone's tray. Throws AppError `not-allowed`, `not-found`,
 * `reading-blind`, `bad-input` for what the reference cannot hold, or `conflict` where the mark is no stray or somebody else
 * saved a version meanwhile.
 */
export async function acceptStray(
  viewer: Viewer,
  input: AcceptStray,
): Promise<{ version: number; stoneId: string }> {
  requireRole(viewer, "review-sitting");
  requireRole(viewer, "edit-tray");
  const wanted = parseInput(AcceptStraySchema, input);
  const database = getDatabase();
  const { row } = requireAccess(viewer, "review-sitting", await findSitting(database, wanted.sittingId));
  const stone = requireAccess(viewer, "edit-tray", await findStone(database, row.exerciseStone.stone.id)).row;
  await requireUnblinded(viewer, [stone.id]);
  const { handIn } = row;
  const current = handIn?.results[0];
  const [latest] = stone.references;
  const result = current && parseColumn(ScoreResultSchema, current.result, "Result.result");
  const mark =
    handIn === null
      ? undefined
      : parseColumn(PlotSchema, handIn.plot, "HandIn.plot").marks.find(({ id }) => id === wanted.markId);
  if (!result?.strays.some((stray) => stray.mark === wanted.markId) || !mark || !latest) {
    throw new AppError("conflict", "This mark is no stray now; nothing was written.");
  }
  const reference = parseColumn(ReferenceSchema, latest.body, "Reference.body");
  const { version } = await saveReference(viewer, {
    stoneId: stone.id,
    baseVersion: wanted.baseVersion,
    reference: takeStrayIn(reference, mark, result.alignment.turnDeg, wanted),
    note: NOTE,
  });
  return { version, stoneId: stone.id };
}
