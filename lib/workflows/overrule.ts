import type { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import type { SittingRow } from "@/lib/data/store/find-sitting";
import { listOverrules } from "@/lib/data/store/list-overrules";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { isReplacedBy, type Ruling, RulingSchema } from "@/lib/plot/overrule";
import { parseInput } from "@/lib/plot/parse-input";
import { PlotSchema } from "@/lib/plot/plots-file";
import { nameRuling, OverruleInputSchema } from "@/lib/plot/review";
import { ReferenceSchema } from "@/lib/plot/stone";
import { beginReviewStep } from "@/lib/workflows/review/begin-step";
import { overruleResult } from "@/lib/workflows/review/overrule-result";

/** Refuses a ruling about something that is not there. */
function requireSubject({ handIn }: SittingRow, ruling: Ruling): void {
  const current = handIn?.results[0];
  if (handIn === null || current === undefined) return;
  const reference = parseColumn(ReferenceSchema, current.reference.body, "Reference.body");
  const { marks } = parseColumn(PlotSchema, handIn.plot, "HandIn.plot");
  const refuse = (path: string, message: string) => {
    throw new AppError("bad-input", "This cannot be overruled.", [{ path: `ruling.${path}`, message }]);
  };
  if (ruling.kind === "grade") {
    if (reference.grades[ruling.property] === undefined)
      refuse("property", "the reference does not grade it");
    return;
  }
  if (!marks.some(({ id }) => id === ruling.mark)) refuse("mark", "the plot has no such mark");
  if (ruling.kind === "cause") return;
  if (!reference.marks.some(({ id }) => id === ruling.reference)) {
    refuse("reference", "the reference has no such mark");
  }
}

/** Ends those in force whose place the new one takes. */
async function endReplaced(
  transaction: Transaction,
  viewer: Viewer,
  sittingId: string,
  ruling: Ruling,
): Promise<void> {
  const before = (await listOverrules(transaction, [sittingId])).get(sittingId)?.overrules ?? [];
  const replaced = before.filter((one) => isReplacedBy(one.ruling, ruling)).map(({ id }) => id);
  await transaction.overrule.updateMany({
    where: { id: { in: replaced } },
    data: { endedAt: new Date(), endedById: viewer.userId },
  });
}

/**
 * Overrules a match, a cause or a grade's credit of a scored plot, with a reason; at once in its points and tallies, and kept
 * through rescoring. Gives the review's new revision. Throws AppError `not-allowed`, `not-found`, `reading-blind`,
 * `bad-input`, or `conflict`: somebody changed the review meanwhile, or the stone since it was scored.
 */
export async function overrule(
  viewer: Viewer,
  input: z.input<typeof OverruleInputSchema>,
): Promise<{ revision: number }> {
  requireRole(viewer, "review-sitting");
  const { sittingId, baseRevision, ruling, reason } = parseInput(OverruleInputSchema, input);
  const words = `overruled ${nameRuling(ruling)}`;
  return runInTransaction(async (transaction) => {
    const terms = { sittingId, baseRevision, words, action: "overrule" };
    const { row, revision } = await beginReviewStep(transaction, viewer, terms);
    requireSubject(row, ruling);
    await endReplaced(transaction, viewer, sittingId, ruling);
    await transaction.overrule.create({
      data: {
        sittingId,
        revision,
        ruling: toColumn(RulingSchema, ruling),
        reason,
        referenceVersion: row.handIn?.results[0]?.reference.version ?? 0,
        authorId: viewer.userId,
      },
    });
    await overruleResult(transaction, sittingId);
    return { revision };
  });
}
