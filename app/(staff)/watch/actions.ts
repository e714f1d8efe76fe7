"use server";

import { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { requireViewer } from "@/lib/data/require-viewer";
import { sendNotes } from "@/lib/workflows/send-notes";

const InputSchema = z.strictObject({ sittingIds: z.array(z.string()), text: z.string() });

/** Sends a short note to benches; the watch itself shows that it was sent, and when it is seen. */
export async function sendNotesAction(
  input: unknown,
): Promise<ActionResult<{ sent: number; handedIn: number }>> {
  return toActionResult(async () => sendNotes(await requireViewer(), InputSchema.parse(input)));
}
