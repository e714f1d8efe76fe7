"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { requireViewer } from "@/lib/data/require-viewer";
import { RubricSchema } from "@/lib/plot/rubric";
import { updateProgramSettings } from "@/lib/workflows/update-program-settings";

const SettingsInputSchema = z.strictObject({ baseRevision: z.int().min(0), rubric: RubricSchema });

export async function saveSettingsAction(input: unknown): Promise<ActionResult<{ revision: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const saved = await updateProgramSettings(viewer, SettingsInputSchema.parse(input));
    revalidatePath("/settings");
    revalidatePath("/exercises", "layout");
    return saved;
  });
}
