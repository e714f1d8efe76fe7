import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { findRescore, isOvertakenNow, type RescoreWithParts } from "@/lib/data/store/find-rescore";
import { listRescoreChanges } from "@/lib/data/store/list-rescore-changes";
import { toColumn } from "@/lib/data/store/to-column";
import { writeTrail } from "@/lib/data/store/write-trail";
import { parseInput } from "@/lib/plot/parse-input";
import {
  type RescoreSummary,
  RescoreSummarySchema,
  summariseRescore,
  toSignedPoints,
} from "@/lib/plot/rescore";
import { writeTallies } from "@/lib/workflows/tally/write-tallies";

const InputSchema = z.strictObject({ rescoreId: z.string() });

/** By what, how many, and by how much, for the trail. */
function describeRescore({ exercise }: RescoreWithParts, summary: RescoreSummary): string {
  const references = exercise.stones.flatMap(({ stone }) => {
    const [latest] = stone.references;
    return latest === undefined ? [] : [`${stone.label} ${latest.version}`];
  });
  const { changed, unchanged, up, down, meanHundredths, largestHundredths } = summary;
  return [
    `rubric version ${exercise.rubrics[0]?.version}`,
    `references ${references.join(", ")}`,
    `${changed} of ${changed + unchanged} results changed (${up} up, ${down} down)`,
    `mean ${toSignedPoints(meanHundredths)}, largest ${toSignedPoints(largestHundredths)} points`,
  ].join("; ");
}

/** Takes the old results out of force and puts the rescore's in, each hand-in once, with their tallies. */
async function switchResults(transaction: Transaction, rescoreId: string): Promise<void> {
  await transaction.result.updateMany({
    where: { isCurrent: true, handIn: { results: { some: { rescoreId } } } },
    data: { isCurrent: false },
  });
  await transaction.result.updateMany({ where: { rescoreId }, data: { isCurrent: true } });
  const inForce = await transaction.result.findMany({ where: { rescoreId }, select: { id: true } });
  await writeTallies(
    transaction,
    inForce.map(({ id }) => id),
  );
}

/**
 * Puts a rescore that is worked out in force: all of its results at once, in one transaction; the earlier ones are kept.
 * Throws AppError `not-allowed`, `not-found`, or `conflict` where it is not ready, is over, or was overtaken by a newer
 * rubric, reference or body: what was looked at is then not what would be applied.
 */
export async function applyRescore(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<RescoreSummary> {
  requireRole(viewer, "rescore-exercise");
  const { rescoreId } = parseInput(InputSchema, input);
  return runInTransaction(async (transaction) => {
    const { row } = requireAccess(viewer, "rescore-exercise", await findRescore(transaction, rescoreId));
    if (row.state !== "ready") {
      throw new AppError("conflict", "This rescore is not waiting to be applied; nothing was changed.");
    }
    if (isOvertakenNow(row)) {
      throw new AppError(
        "conflict",
        "The rubric, a reference or a stone was changed after this was worked out. Nothing was changed: work it out again.",
      );
    }
    const summary = summariseRescore(await listRescoreChanges(transaction, rescoreId));
    await switchResults(transaction, rescoreId);
    await transaction.rescore.update({
      where: { id: rescoreId },
      data: {
        state: "applied",
        summary: toColumn(RescoreSummarySchema, summary),
        endedById: viewer.userId,
        endedAt: new Date(),
      },
    });
    await writeTrail(transaction, viewer, {
      action: "rescore-exercise",
      subjectKind: "exercise",
      subjectId: row.exerciseId,
      detail: describeRescore(row, summary),
    });
    return summary;
  });
}
