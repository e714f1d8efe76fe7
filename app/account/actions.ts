"use server";

import { z } from "zod";
import { toActionResult } from "@/components/forms/action-result";
import { requireViewer } from "@/lib/data/require-viewer";
import { setPassword } from "@/lib/workflows/set-password";

const InputSchema = z.strictObject({ current: z.string(), next: z.string() });

/** Changes the viewer's own password. */
export async function changePasswordAction(input: unknown) {
  return toActionResult(async () => {
    await setPassword(await requireViewer(), InputSchema.parse(input));
    return null;
  });
}
