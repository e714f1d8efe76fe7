"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { requireViewer } from "@/lib/data/require-viewer";
import { IdSchema } from "@/lib/plot/mark";
import { ReferenceSchema, StoneBodySchema } from "@/lib/plot/stone";
import { createStone } from "@/lib/workflows/create-stone";
import { saveReference } from "@/lib/workflows/save-reference";
import { updateStone } from "@/lib/workflows/update-stone";

const StoneInputSchema = z.strictObject({
  label: IdSchema,
  body: StoneBodySchema,
  revision: z.int().min(0),
});
const ReferenceInputSchema = z.strictObject({
  baseVersion: z.int().min(0),
  reference: ReferenceSchema,
  note: z.string().trim().max(1000),
});

export async function createStoneAction(
  trayId: string,
  input: unknown,
): Promise<ActionResult<{ stoneId: string }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { label, body } = StoneInputSchema.parse(input);
    const { stoneId } = await createStone(viewer, { trayId: z.string().parse(trayId), label, body });
    revalidatePath("/trays", "layout");
    return { stoneId };
  });
}

export async function updateStoneAction(
  stoneId: string,
  input: unknown,
): Promise<ActionResult<{ stoneId: string }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await updateStone(viewer, { stoneId: z.string().parse(stoneId), ...StoneInputSchema.parse(input) });
    revalidatePath("/trays", "layout");
    return { stoneId };
  });
}

export async function saveReferenceAction(
  stoneId: string,
  input: unknown,
): Promise<ActionResult<{ version: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { version } = await saveReference(viewer, {
      stoneId: z.string().parse(stoneId),
      ...ReferenceInputSchema.parse(input),
    });
    revalidatePath("/trays", "layout");
    return { version };
  });
}
