"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { requireViewer } from "@/lib/data/require-viewer";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { RubricSchema } from "@/lib/plot/rubric";
import { createExercise } from "@/lib/workflows/create-exercise";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { updateExercise } from "@/lib/workflows/update-exercise";
import { withdrawRelease } from "@/lib/workflows/withdraw-release";

const ExerciseInputSchema = z.strictObject({
  sectionId: z.string(),
  title: z.string().trim().min(1).max(200),
  notes: z.string().max(10_000),
  opensAt: z.iso.datetime(),
  dueAt: z.iso.datetime(),
  closesAt: z.iso.datetime().nullable(),
  rules: ExerciseRulesSchema,
  orientation: RubricSchema.shape.orientation,
  stoneIds: z.array(z.string()).min(1),
  revision: z.int().min(0),
});
const SittingIdsSchema = z.array(z.string()).min(1).max(20_000);

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
