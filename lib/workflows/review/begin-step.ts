import { requireAccess } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import type { Transaction } from "@/lib/data/store/database";
import { requireUnblinded } from "@/lib/data/store/find-open-reading";
import { findSitting, type SittingRow } from "@/lib/data/store/find-sitting";
import { writeTrail } from "@/lib/data/store/write-trail";

export interface ReviewStepTerms {
  readonly sittingId: string;
  /** The revision of the review that the change was made from. */
  readonly baseRevision: number;
  /** What is changed, for whoever is told of it: no free text. */
  readonly words: string;
  /** The action in the trail. */
  readonly action: string;
}

/** What the others did since, the last few of it. */
async function tellSteps(transaction: Transaction, sittingId: string, baseRevision: number): Promise<string> {
  const steps = await transaction.reviewStep.findMany({
    where: { sittingId, revision: { gt: baseRevision } },
    orderBy: { revision: "desc" },
    take: 5,
    include: { by: { select: { name: true } } },
  });
  return steps
    .reverse()
    .map(({ by, words }) => `${by.name} ${words}`)
    .join("; ");
}

/**
 * Begins a change of a sitting's review in the transaction that makes it: asks for access, refuses one that was made from an
 * older revision, raises the revision and notes who changed what. Throws AppError `not-allowed`, `not-found`,
 * `reading-blind`, or `conflict`, which names who changed what meanwhile, also where the sitting has no result.
 */
export async function beginReviewStep(
  transaction: Transaction,
  viewer: Viewer,
  { sittingId, baseRevision, words, action }: ReviewStepTerms,
): Promise<{ row: SittingRow; revision: number }> {
  const { row } = requireAccess(viewer, "review-sitting", await findSitting(transaction, sittingId));
  await requireUnblinded(viewer, [row.exerciseStone.stone.id], transaction);
  if (row.handIn?.results[0] === undefined) {
    throw new AppError("conflict", "This stone is not handed in and scored; there is nothing to review yet.");
  }
  if (row.reviewRevision !== baseRevision) {
    const steps = await tellSteps(transaction, sittingId, baseRevision);
    throw new AppError(
      "conflict",
      `Meanwhile ${steps || "somebody changed this review"}. Nothing of yours was written: look at what is there now, then send it again.`,
    );
  }
  const revision = baseRevision + 1;
  await transaction.sitting.update({ where: { id: sittingId }, data: { reviewRevision: revision } });
  await transaction.reviewStep.create({ data: { sittingId, revision, words, byId: viewer.userId } });
  await writeTrail(transaction, viewer, { action, subjectKind: "sitting", subjectId: sittingId });
  return { row, revision };
}
