"use server";

/**
 * Changes of a review. Each answers with the review as it stands then, and none revalidates a path: the review desk
 * holds several at once and shows the answer itself.
 */
import type { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import type { Viewer } from "@/lib/access/viewer";
import { getReview } from "@/lib/data/get-review";
import { listTouchedExercises } from "@/lib/data/list-touched-exercises";
import { requireViewer } from "@/lib/data/require-viewer";
import { AcceptStraySchema } from "@/lib/plot/accept-stray";
import type { TouchedExercise } from "@/lib/plot/rescore-view";
import {
  CommentInputSchema,
  DeleteCommentSchema,
  OverruleInputSchema,
  UndoInputSchema,
} from "@/lib/plot/review";
import type { ReviewView } from "@/lib/plot/review-view";
import { acceptStray } from "@/lib/workflows/accept-stray";
import { deleteComment } from "@/lib/workflows/delete-comment";
import { overrule } from "@/lib/workflows/overrule";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { undoOverrule } from "@/lib/workflows/undo-overrule";
import { withdrawRelease } from "@/lib/workflows/withdraw-release";
import { writeComment } from "@/lib/workflows/write-comment";

async function change<S extends z.ZodType<{ sittingId: string }>>(
  schema: S,
  input: unknown,
  apply: (viewer: Viewer, parsed: z.output<S>) => Promise<unknown>,
): Promise<ActionResult<ReviewView>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const parsed = schema.parse(input);
    await apply(viewer, parsed);
    return getReview(viewer, parsed.sittingId);
  });
}

export async function overruleAction(input: unknown): Promise<ActionResult<ReviewView>> {
  return change(OverruleInputSchema, input, overrule);
}

export async function undoOverruleAction(input: unknown): Promise<ActionResult<ReviewView>> {
  return change(UndoInputSchema, input, undoOverrule);
}

export async function writeCommentAction(input: unknown): Promise<ActionResult<ReviewView>> {
  return change(CommentInputSchema, input, writeComment);
}

export async function deleteCommentAction(input: unknown): Promise<ActionResult<ReviewView>> {
  return change(DeleteCommentSchema, input, deleteComment);
}

export async function acceptStrayAction(
  input: unknown,
): Promise<ActionResult<{ version: number; touched: TouchedExercise[]; review: ReviewView }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const parsed = AcceptStraySchema.parse(input);
    const { version, stoneId } = await acceptStray(viewer, parsed);
    const touched = await listTouchedExercises(viewer, stoneId);
    return { version, touched, review: await getReview(viewer, parsed.sittingId) };
  });
}

export async function setReleasedAction(
  sittingId: string,
  isReleased: boolean,
): Promise<ActionResult<ReviewView>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const input = { sittingIds: [String(sittingId)] };
    if (isReleased === true) await releaseDebriefs(viewer, input);
    else await withdrawRelease(viewer, input);
    return getReview(viewer, String(sittingId));
  });
}
