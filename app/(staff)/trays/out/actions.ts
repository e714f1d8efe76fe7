"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { getScannedStone } from "@/lib/data/get-scanned-stone";
import { requireViewer } from "@/lib/data/require-viewer";
import type { HandOutInput, ScannedStone } from "@/lib/plot/hand-out";
import { parseInput } from "@/lib/plot/parse-input";
import type { StoneVerdict } from "@/lib/plot/stone-check";
import { checkStone } from "@/lib/workflows/check-stone";
import { handOutStones } from "@/lib/workflows/hand-out-stones";
import { settleStoneCheck } from "@/lib/workflows/settle-stone-check";
import { takeBackStones } from "@/lib/workflows/take-back-stones";

const TextSchema = z.string().max(300);

export async function handOutAction(input: unknown): Promise<ActionResult<{ handedOut: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const done = await handOutStones(viewer, input as HandOutInput);
    revalidatePath("/trays", "layout");
    return done;
  });
}

export async function takeBackAction(stoneIds: unknown): Promise<ActionResult<{ takenBack: number }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const done = await takeBackStones(viewer, { stoneIds } as Parameters<typeof takeBackStones>[1]);
    revalidatePath("/trays", "layout");
    return done;
  });
}

export async function scanAction(text: unknown): Promise<ActionResult<ScannedStone>> {
  return toActionResult(async () => getScannedStone(await requireViewer(), parseInput(TextSchema, text)));
}

export async function checkStoneAction(input: unknown): Promise<ActionResult<{ verdict: StoneVerdict }>> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { verdict } = await checkStone(viewer, input as Parameters<typeof checkStone>[1]);
    revalidatePath("/trays", "layout");
    return { verdict };
  });
}

export async function settleStoneCheckAction(checkId: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await settleStoneCheck(viewer, { checkId: parseInput(TextSchema, checkId) });
    revalidatePath("/trays", "layout");
    return undefined;
  });
}
