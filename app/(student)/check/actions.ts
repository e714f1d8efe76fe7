"use server";

import { after } from "next/server";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { requireViewer } from "@/lib/data/require-viewer";
import { judgeStoneChecks } from "@/lib/workflows/judge-stone-checks";
import { sendStoneCheck } from "@/lib/workflows/send-stone-check";

/** Sends what a student saw to their instructor. Answered alike whatever it was; worked out once this is answered. */
export async function sendStoneCheckAction(input: unknown): Promise<ActionResult> {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    await sendStoneCheck(viewer, input as Parameters<typeof sendStoneCheck>[1]);
    after(() => judgeStoneChecks().catch((thrown: unknown) => console.error(thrown)));
    return undefined;
  });
}
