import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { findStone } from "@/lib/data/store/find-stone";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { resolveTerms, TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { findReferenceFaults, findSolid } from "@/lib/plot/find-plot-faults";
import { parseInput } from "@/lib/plot/parse-input";
import { ReferenceSchema, StoneBodySchema } from "@/lib/plot/stone";

const InputSchema = z.strictObject({
  stoneId: z.string(),
  /** The version that the change was made from; 0 for the first. */
  baseVersion: z.int().min(0),
  reference: ReferenceSchema,
  note: z.string().trim().max(1000).default(""),
});

/**
 * Saves a stone's reference as a new version; earlier ones stay as they are, and so do the results that were scored by
 * them until staff rescore the exercise. Throws AppError `not-allowed`, `not-found`, `reading-blind`, `bad-input`, or `conflict` when somebody else
 * saved a version first.
 */
export async function saveReference(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ version: number }> {
  requireRole(viewer, "edit-tray");
  const { stoneId, baseVersion, reference, note } = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "edit-tray", await findStone(transaction, stoneId));
    await requireUnblinded(viewer, [stoneId], transaction);
    if ((row.references[0]?.version ?? 0) !== baseVersion) {
      throw new AppError(
        "conflict",
        "Somebody else saved a version of this reference meanwhile; nothing was written.",
      );
    }
    const { solid } = findSolid(parseColumn(StoneBodySchema, row.body, "Stone.body"), "body");
    const terms = resolveTerms(parseColumn(TrayTermsSchema, row.tray.terms, "Tray.terms"));
    const faults = findReferenceFaults(reference, solid, terms, "reference");
    if (faults.length > 0) throw new AppError("bad-input", "The reference was not saved.", faults);
    const version = baseVersion + 1;
    await transaction.reference.create({
      data: { stoneId, version, body: toColumn(ReferenceSchema, reference), note, authorId: viewer.userId },
    });
    await writeTrail(transaction, viewer, {
      action: "save-reference",
      subjectKind: "stone",
      subjectId: stoneId,
      detail: `version ${version}`,
    });
    return { version };
  });
}
