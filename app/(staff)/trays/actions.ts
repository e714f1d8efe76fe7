"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { requireViewer } from "@/lib/data/require-viewer";
import type { SetImportPlan } from "@/lib/plot/set-import";
import { createTray } from "@/lib/workflows/create-tray";
import { importExerciseSet } from "@/lib/workflows/import-exercise-set";
import { planExerciseSetImport } from "@/lib/workflows/plan-exercise-set-import";
import { updateTray } from "@/lib/workflows/update-tray";

const TrayInputSchema = z.strictObject({
  name: z.string().trim().min(1, "give the tray a name").max(200),
  notes: z.string().max(10_000),
});
const PlanInputSchema = z.strictObject({
  json: z.unknown(),
  trayId: z.string().nullable(),
  trayName: TrayInputSchema.shape.name,
});
const ImportInputSchema = z.strictObject({ ...PlanInputSchema.shape, fingerprint: z.string() });

export async function createTrayAction(input: unknown): Promise<ActionResult<{ trayId: string }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { trayId } = await createTray(viewer, TrayInputSchema.parse(input));
    revalidatePath("/trays");
    return { trayId };
  });
}

export async function updateTrayAction(
  trayId: string,
  input: unknown,
): Promise<ActionResult<{ trayId: string }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await updateTray(viewer, { trayId: z.string().parse(trayId), ...TrayInputSchema.parse(input) });
    revalidatePath("/trays", "layout");
    return { trayId };
  });
}

export async function planSetImportAction(input: unknown): Promise<ActionResult<SetImportPlan>> {
  return toActionResult(async () =>
    planExerciseSetImport(await requireViewer(), PlanInputSchema.parse(input)),
  );
}

export async function importSetAction(input: unknown): Promise<ActionResult<{ trayId: string }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { trayId } = await importExerciseSet(viewer, ImportInputSchema.parse(input));
    revalidatePath("/trays", "layout");
    return { trayId };
  });
}
