"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { requireViewer } from "@/lib/data/require-viewer";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import type { RankedStone } from "@/lib/plot/rank-retake-stones";
import { RubricSchema } from "@/lib/plot/rubric";
import { applyRescore } from "@/lib/workflows/apply-rescore";
import { createExercise } from "@/lib/workflows/create-exercise";
import { discardRescore } from "@/lib/workflows/discard-rescore";
import { duplicateExercise } from "@/lib/workflows/duplicate-exercise";
import { grantExtension } from "@/lib/workflows/grant-extension";
import { grantExtraTime } from "@/lib/workflows/grant-extra-time";
import { grantRetake } from "@/lib/workflows/grant-retake";
import { listRetakeStones } from "@/lib/workflows/list-retake-stones";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { runRescore } from "@/lib/workflows/run-rescore";
import { saveRubric } from "@/lib/workflows/save-rubric";
import { startRescore } from "@/lib/workflows/start-rescore";
import { updateExercise } from "@/lib/workflows/update-exercise";
import { withdrawRelease } from "@/lib/workflows/withdraw-release";

const ExerciseInputSchema = z.strictObject({
  sectionId: z.string(),
  title: z.string().trim().min(1).max(200),
  notes: z.string().max(10_000),
  opensAt: z.iso.datetime(),
  dueAt: z.iso.datetime(),
  closesAt: z.iso.datetime().nullable(),
  debriefsAt: z.iso.datetime().nullable(),
  rules: ExerciseRulesSchema,
  orientation: RubricSchema.shape.orientation,
  stoneIds: z.array(z.string()).min(1),
  stoneOpenings: z.record(z.string(), z.iso.datetime()),
  revision: z.int().min(0),
});
const DuplicateInputSchema = z.strictObject({
  exerciseId: z.string(),
  sectionId: z.string(),
  title: z.string().trim().min(1).max(200),
  opensAt: z.iso.datetime(),
});
const RubricInputSchema = z.strictObject({ baseVersion: z.int().min(1), rubric: RubricSchema });
const ExtraTimeSchema = z.strictObject({
  studentId: z.string(),
  extraMinutes: z.int(),
  reason: z.string(),
});
const SittingIdsSchema = z.array(z.string()).min(1).max(20_000);

const ExtensionSchema = z.strictObject({
  studentId: z.string(),
  dueAt: z.iso.datetime().nullable(),
  closesAt: z.iso.datetime().nullable(),
  extraAttempts: z.int(),
  reason: z.string(),
});
const RetakePlaceSchema = z.strictObject({ studentId: z.string(), exerciseStoneId: z.string() });
const RetakeSchema = z.strictObject({
  ...RetakePlaceSchema.shape,
  stoneId: z.string().nullable(),
  reason: z.string(),
});

export async function createExerciseAction(input: unknown): Promise<ActionResult<{ exerciseId: string }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { revision: _none, orientation, ...exercise } = ExerciseInputSchema.parse(input);
    const { exerciseId } = await createExercise(viewer, { ...exercise, rubric: { orientation } });
    revalidatePath("/exercises");
    return { exerciseId };
  });
}

export async function updateExerciseAction(
  exerciseId: string,
  input: unknown,
): Promise<ActionResult<{ exerciseId: string }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { sectionId: _fixed, orientation, ...exercise } = ExerciseInputSchema.parse(input);
    await updateExercise(viewer, {
      ...exercise,
      exerciseId: z.string().parse(exerciseId),
      rubric: { orientation },
    });
    revalidatePath("/exercises", "layout");
    return { exerciseId };
  });
}

export async function duplicateExerciseAction(input: unknown): Promise<ActionResult<{ exerciseId: string }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const copy = await duplicateExercise(viewer, DuplicateInputSchema.parse(input));
    revalidatePath("/exercises");
    return copy;
  });
}

export async function releaseDebriefsAction(
  exerciseId: string,
  sittingIds: unknown,
): Promise<ActionResult<{ count: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const ids = SittingIdsSchema.parse(sittingIds);
    await releaseDebriefs(viewer, { sittingIds: ids });
    revalidatePath(`/exercises/${exerciseId}`, "layout");
    return { count: ids.length };
  });
}

export async function withdrawReleaseAction(
  exerciseId: string,
  sittingIds: unknown,
): Promise<ActionResult<{ count: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const ids = SittingIdsSchema.parse(sittingIds);
    await withdrawRelease(viewer, { sittingIds: ids });
    revalidatePath(`/exercises/${exerciseId}`, "layout");
    return { count: ids.length };
  });
}

export async function grantExtraTimeAction(exerciseId: string, input: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await grantExtraTime(viewer, {
      exerciseId: z.string().parse(exerciseId),
      ...ExtraTimeSchema.parse(input),
    });
    revalidatePath(`/exercises/${exerciseId}`, "layout");
    return undefined;
  });
}

export async function grantExtensionAction(exerciseId: string, input: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const extension = ExtensionSchema.parse(input);
    await grantExtension(viewer, { exerciseId: z.string().parse(exerciseId), ...extension });
    revalidatePath(`/exercises/${exerciseId}`, "layout");
    return undefined;
  });
}

export async function listRetakeStonesAction(
  exerciseId: string,
  input: unknown,
): Promise<ActionResult<RankedStone[]>> {
  return toActionResult(async () =>
    listRetakeStones(await requireViewer(), {
      exerciseId: z.string().parse(exerciseId),
      ...RetakePlaceSchema.parse(input),
    }),
  );
}

export async function grantRetakeAction(exerciseId: string, input: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await grantRetake(viewer, { exerciseId: z.string().parse(exerciseId), ...RetakeSchema.parse(input) });
    revalidatePath(`/exercises/${exerciseId}`, "layout");
    return undefined;
  });
}

export async function saveRubricAction(
  exerciseId: string,
  input: unknown,
): Promise<ActionResult<{ version: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const rubric = RubricInputSchema.parse(input);
    const saved = await saveRubric(viewer, { exerciseId: z.string().parse(exerciseId), ...rubric });
    revalidatePath(`/exercises/${exerciseId}`, "layout");
    return saved;
  });
}

export async function startRescoreAction(exerciseId: string): Promise<ActionResult<{ rescoreId: string }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { rescoreId } = await startRescore(viewer, { exerciseId: z.string().parse(exerciseId) });
    // Not waited for: the page shows how far it is, and a start of the server goes on with it.
    runRescore(rescoreId).catch((thrown: unknown) => console.error("a rescore was cut off", thrown));
    revalidatePath(`/exercises/${exerciseId}`, "layout");
    return { rescoreId };
  });
}

export async function applyRescoreAction(
  exerciseId: string,
  rescoreId: string,
): Promise<ActionResult<{ changed: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { changed } = await applyRescore(viewer, { rescoreId: z.string().parse(rescoreId) });
    revalidatePath(`/exercises/${exerciseId}`, "layout");
    return { changed };
  });
}

export async function discardRescoreAction(exerciseId: string, rescoreId: string): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await discardRescore(viewer, { rescoreId: z.string().parse(rescoreId) });
    revalidatePath(`/exercises/${exerciseId}`, "layout");
    return undefined;
  });
}
