import { z } from "zod";
import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";
import { runInTransaction } from "@/lib/data/store/database";
import type { SittingRow } from "@/lib/data/store/find-sitting";
import { parseColumn } from "@/lib/data/store/parse-column";
import {
  requireOwnSitting,
  requireStillOpen,
  requireWriter,
  toOpenness,
} from "@/lib/data/store/require-own-sitting";
import { announceSittings } from "@/lib/data/store/watch-bus";
import { type ExerciseRules, ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ExerciseTermsSchema, resolveTerms } from "@/lib/plot/exercise-terms";
import { listUnproved } from "@/lib/plot/list-unproved";
import { parseInput } from "@/lib/plot/parse-input";
import { PREPARATION_STEPS } from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { isTimeOver } from "@/lib/plot/time-limit";
import { WriterIdSchema } from "@/lib/plot/writer-id";
import { followClock } from "@/lib/workflows/timed/follow-clock";
import { freezeSitting } from "@/lib/workflows/timed/freeze-sitting";

const InputSchema = z.strictObject({
  sittingId: z.string(),
  writerId: WriterIdSchema,
  /** The last step that the bench has: everything up to it must be saved, unless the time ran out. */
  lastSeq: z.int().min(0),
  /** The bench hands in because its clock says that the time ran out. */
  isTimeOut: z.boolean().default(false),
});

/** A bench may be this much ahead of the server's clock, ms. */
const AHEAD_MS = 3000;

type State = z.infer<typeof SittingStateSchema>;

/** Refuses a preparation that the exercise requires and that is not confirmed. */
function requirePrepared(rules: ExerciseRules, { prepared }: State): void {
  if (rules.preparation !== "required") return;
  const open = PREPARATION_STEPS.filter((step) => prepared[step] === undefined);
  if (open.length === 0) return;
  throw new AppError(
    "bad-input",
    "This exercise asks for the preparation card before hand-in; your plot is saved.",
    open.map((step) => ({ path: `prepared.${step}`, message: "is not confirmed" })),
  );
}

/** Refuses marks without the proof that the exercise requires. */
function requireProofs(row: SittingRow, rules: ExerciseRules, { plot }: State): void {
  if (!rules.areProofsRequired) return;
  const { terms } = row.exerciseStone.exercise;
  const { characteristics } = resolveTerms(parseColumn(ExerciseTermsSchema, terms, "Exercise.terms"));
  const open = new Set(listUnproved(plot.marks, rules, characteristics));
  if (open.size === 0) return;
  throw new AppError(
    "bad-input",
    "This exercise requires a proof on each of these marks before hand-in; your plot is saved.",
    plot.marks.flatMap(({ id }, index) =>
      open.has(id) ? [{ path: `plot.marks[${index}].proofs`, message: "has no proof" }] : [],
    ),
  );
}

/** Refuses what stands against handing in of the student's own will. */
function requireComplete(row: SittingRow, writerId: string, lastSeq: number): void {
  requireStillOpen(toOpenness(row));
  if (row.writerId !== null) requireWriter(row, writerId);
  if (row.lastSeq !== lastSeq) {
    throw new AppError(
      "conflict",
      `Not handed in: ${row.lastSeq} steps are saved, the bench has ${lastSeq}.`,
    );
  }
  const rules = parseColumn(ExerciseRulesSchema, row.exerciseStone.exercise.rules, "Exercise.rules");
  const state = parseColumn(SittingStateSchema, row.state, "Sitting.state");
  requirePrepared(rules, state);
  requireProofs(row, rules, state);
}

/**
 * Hands a sitting in and freezes it; handing in again gives the same answer. Scoring is another step, after the
 * answer, so that the time taken tells nothing. Once the time has run out, what is saved goes in as it is, whatever
 * is still open. Throws AppError `not-found`, `closed`, `taken-over`, `conflict` when not every step is saved or the
 * time that was said to be over is not, or `bad-input` when preparation or proofs that the exercise requires lack.
 */
export async function handIn(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ handedInAt: string; handInId: string }> {
  requireRole(viewer, "write-bench");
  const { sittingId, writerId, lastSeq, isTimeOut } = parseInput(InputSchema, input);
  await followClock();
  const handedIn = await runInTransaction(async (transaction) => {
    const row = await requireOwnSitting(transaction, viewer, sittingId);
    if (row.handIn !== null) {
      return { handedInAt: row.handIn.handedInAt.toISOString(), handInId: row.handIn.id };
    }
    const timedOut = isTimeOver(row, Date.now() + (isTimeOut ? AHEAD_MS : 0));
    if (isTimeOut && !timedOut) throw new AppError("conflict", "The time for this stone is not over yet.");
    if (timedOut && row.writerId !== null) requireWriter(row, writerId);
    if (!timedOut) requireComplete(row, writerId, lastSeq);
    const made = await freezeSitting(transaction, viewer, row, timedOut);
    return { handedInAt: made.handedInAt.toISOString(), handInId: made.handInId };
  });
  announceSittings(sittingId);
  return handedIn;
}
