"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { requireViewer } from "@/lib/data/require-viewer";
import { IdSchema } from "@/lib/plot/mark";
import { ReadingPlotSchema, SettlingSchema } from "@/lib/plot/second-reading";
import { ReferenceSchema, StoneBodySchema } from "@/lib/plot/stone";
import { PhotoCaptionSchema } from "@/lib/plot/stone-photo";
import { createStone } from "@/lib/workflows/create-stone";
import { deletePhoto } from "@/lib/workflows/delete-photo";
import { dismissSuggestion } from "@/lib/workflows/dismiss-suggestion";
import { giveUpSecondReading } from "@/lib/workflows/give-up-second-reading";
import { handInSecondReading } from "@/lib/workflows/hand-in-second-reading";
import { orderPhotos } from "@/lib/workflows/order-photos";
import { saveReference } from "@/lib/workflows/save-reference";
import { saveSecondReading } from "@/lib/workflows/save-second-reading";
import { settleSecondReading } from "@/lib/workflows/settle-second-reading";
import { startSecondReading } from "@/lib/workflows/start-second-reading";
import { updatePhoto } from "@/lib/workflows/update-photo";
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

const ReadingInputSchema = z.strictObject({ revision: z.int().min(1), plot: ReadingPlotSchema });
const SettleInputSchema = z.strictObject({
  baseVersion: z.int().min(1),
  choices: SettlingSchema,
  note: z.string().trim().max(800),
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

const PhotoInputSchema = z.strictObject({
  photoId: z.string(),
  caption: PhotoCaptionSchema,
  isShown: z.boolean(),
});

export async function updatePhotoAction(input: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await updatePhoto(viewer, PhotoInputSchema.parse(input));
    revalidatePath("/trays", "layout");
    return undefined;
  });
}

export async function dismissSuggestionAction(stoneId: string, key: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await dismissSuggestion(viewer, { stoneId: z.string().parse(stoneId), key: z.string().parse(key) });
    revalidatePath("/trays", "layout");
    return undefined;
  });
}

export async function orderPhotosAction(stoneId: string, photoIds: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const ids = z.array(z.string()).parse(photoIds);
    await orderPhotos(viewer, { stoneId: z.string().parse(stoneId), photoIds: ids });
    revalidatePath("/trays", "layout");
    return undefined;
  });
}

export async function startSecondReadingAction(
  stoneId: string,
): Promise<ActionResult<{ readingId: string }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const begun = await startSecondReading(viewer, { stoneId: z.string().parse(stoneId) });
    revalidatePath("/trays", "layout");
    return begun;
  });
}

export async function saveSecondReadingAction(
  readingId: string,
  input: unknown,
): Promise<ActionResult<{ revision: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    return saveSecondReading(viewer, {
      readingId: z.string().parse(readingId),
      ...ReadingInputSchema.parse(input),
    });
  });
}

export async function handInSecondReadingAction(readingId: string, input: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await handInSecondReading(viewer, {
      readingId: z.string().parse(readingId),
      ...ReadingInputSchema.parse(input),
    });
    revalidatePath("/trays", "layout");
    return undefined;
  });
}

export async function deletePhotoAction(photoId: string): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await deletePhoto(viewer, { photoId: z.string().parse(photoId) });
    revalidatePath("/trays", "layout");
    return undefined;
  });
}

export async function giveUpSecondReadingAction(readingId: string): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await giveUpSecondReading(viewer, { readingId: z.string().parse(readingId) });
    revalidatePath("/trays", "layout");
    revalidatePath("/second-readings");
    return undefined;
  });
}

export async function settleSecondReadingAction(
  readingId: string,
  input: unknown,
): Promise<ActionResult<{ version: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const settled = await settleSecondReading(viewer, {
      readingId: z.string().parse(readingId),
      ...SettleInputSchema.parse(input),
    });
    revalidatePath("/trays", "layout");
    return settled;
  });
}
