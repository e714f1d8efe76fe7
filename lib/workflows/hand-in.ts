import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import type { SittingRow } from "@/lib/data/store/find-sitting";
import { parseColumn } from "@/lib/data/store/parse-column";
import { requireOwnSitting, requireStillOpen, requireWriter } from "@/lib/data/store/require-own-sitting";
import { toColumn } from "@/lib/data/store/to-column";
import { announceSittings } from "@/lib/data/store/watch-bus";
import { writeTrail } from "@/lib/data/store/write-trail";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { parseInput } from "@/lib/plot/parse-input";
import { PlotSchema } from "@/lib/plot/plots-file";
import { PREPARATION_STEPS } from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { PreparedSchema } from "@/lib/plot/student-view";
import { WriterIdSchema } from "@/lib/plot/writer-id";

const InputSchema = z.strictObject({
  sittingId: z.string(),
  writerId: WriterIdSchema,
  /** The last step that the bench has: everything up to it must be saved. */
  lastSeq: z.int().min(0),
});

/** Refuses a preparation that the exercise requires and that is not confirmed. */
function requirePrepared(row: SittingRow, prepared: z.infer<typeof PreparedSchema>): void {
  const rules = parseColumn(ExerciseRulesSchema, row.exerciseStone.exercise.rules, "Exercise.rules");
  if (rules.preparation !== "required") return;
  const open = PREPARATION_STEPS.filter((step) => prepared[step] === undefined);
  if (open.length === 0) return;
  throw new AppError(
    "bad-input",
    "This exercise asks for the preparation card before hand-in; your plot is saved.",
    open.map((step) => ({ path: `prepared.${step}`, message: "is not confirmed" })),
  );
}

/**
 * Hands a sitting in and freezes it; handing in again gives the same answer. Scoring is another step, after the
 * answer, so that the time taken tells nothing. Throws AppError `not-found`, `closed`, `taken-over`, `conflict` when
 * not every step is saved, or `bad-input` when the preparation that the exercise requires is not confirmed.
 */
export async function handIn(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ handedInAt: string; handInId: string }> {
  requireRole(viewer, "write-bench");
  const { sittingId, writerId, lastSeq } = parseInput(InputSchema, input);
  const handedIn = await runInTransaction(async (transaction) => {
    const row = await requireOwnSitting(transaction, viewer, sittingId);
    if (row.handIn !== null) {
      return { handedInAt: row.handIn.handedInAt.toISOString(), handInId: row.handIn.id };
    }
    requireStillOpen(row);
    if (row.writerId !== null) requireWriter(row, writerId);
    if (row.lastSeq !== lastSeq) {
      throw new AppError(
        "conflict",
        `Not handed in: ${row.lastSeq} steps are saved, the bench has ${lastSeq}.`,
      );
    }
    const { plot, prepared } = parseColumn(SittingStateSchema, row.state, "Sitting.state");
    requirePrepared(row, prepared);
    const made = await transaction.handIn.create({
      data: {
        sittingId,
        plot: toColumn(PlotSchema, plot),
        prepared: toColumn(PreparedSchema, prepared),
        lastSeq,
        handedInAt: new Date(),
      },
    });
    await writeTrail(transaction, viewer, {
      action: "hand-in",
      subjectKind: "sitting",
      subjectId: sittingId,
    });
    return { handedInAt: made.handedInAt.toISOString(), handInId: made.id };
  });
  announceSittings(sittingId);
  return handedIn;
}
