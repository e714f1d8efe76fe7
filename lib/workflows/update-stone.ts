import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError, type Fault } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { findStone, type StoneWithParts } from "@/lib/data/store/find-stone";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { resolveTerms, TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { findReferenceFaults, findSolid } from "@/lib/plot/find-plot-faults";
import { IdSchema } from "@/lib/plot/mark";
import { parseInput } from "@/lib/plot/parse-input";
import { ReferenceSchema, type StoneBody, StoneBodySchema } from "@/lib/plot/stone";

const InputSchema = z.strictObject({
  stoneId: z.string(),
  /** The revision that the change was made from. */
  revision: z.int(),
  label: IdSchema,
  body: StoneBodySchema,
});

/** Faults of the new body, and of the latest reference on it. */
function findBodyFaults(row: StoneWithParts, body: StoneBody): Fault[] {
  const { solid, faults } = findSolid(body, "body");
  const latest = row.references[0];
  if (solid === null || latest === undefined) return faults;
  const reference = parseColumn(ReferenceSchema, latest.body, "Reference.body");
  const terms = resolveTerms(parseColumn(TrayTermsSchema, row.tray.terms, "Tray.terms"));
  return [...faults, ...findReferenceFaults(reference, solid, terms, "reference")];
}

/** A label names its stone within the tray and within every exercise that the stone is set in. */
async function isLabelTaken(transaction: Transaction, row: StoneWithParts, label: string): Promise<boolean> {
  const other = await transaction.stone.findFirst({
    where: {
      label,
      id: { not: row.id },
      OR: [
        { trayId: row.trayId },
        { exerciseStones: { some: { exercise: { stones: { some: { stoneId: row.id } } } } } },
      ],
    },
    select: { id: true },
  });
  return other !== null;
}

/**
 * Changes a stone's label and body. Results stay as they are until staff rescore the exercise. Throws
 * AppError `not-allowed`, `not-found`, `reading-blind`, `conflict` when somebody else changed the stone first or the label is taken,
 * or `bad-input` for a body that makes no stone or that its reference does not fit on.
 */
export async function updateStone(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ revision: number }> {
  requireRole(viewer, "edit-tray");
  const { stoneId, revision, label, body } = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "edit-tray", await findStone(transaction, stoneId));
    await requireUnblinded(viewer, [stoneId], transaction);
    if (row.revision !== revision) {
      throw new AppError("conflict", "Somebody else changed this stone meanwhile; nothing was written.");
    }
    const faults = findBodyFaults(row, body);
    if (faults.length > 0) {
      throw new AppError("bad-input", "The stone was not changed: see what does not fit.", faults);
    }
    if (await isLabelTaken(transaction, row, label)) {
      throw new AppError("conflict", `Another stone is called “${label}” already.`, [
        { path: "label", message: "is taken" },
      ]);
    }
    await transaction.stone.update({
      where: { id: stoneId },
      data: { label, body: toColumn(StoneBodySchema, body), revision: revision + 1 },
    });
    await writeTrail(transaction, viewer, {
      action: "update-stone",
      subjectKind: "stone",
      subjectId: stoneId,
      detail: `revision ${revision + 1}`,
    });
    return { revision: revision + 1 };
  });
}
