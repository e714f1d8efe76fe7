"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { toActionResult } from "@/components/forms/action-result";
import { requireViewer } from "@/lib/data/require-viewer";
import { openSitting } from "@/lib/workflows/open-sitting";

/**
 * Opens a student's sitting on a stone that is set for them, or finds the one they have; `attempt` for a further one. A
 * timed stone wants the minutes that they agreed to.
 */
export async function openSittingAction(
  exerciseStoneId: unknown,
  agreedMinutes: unknown = null,
  attempt: unknown = null,
) {
  return toActionResult(async () => {
    const viewer = await requireViewer();
    const { sittingId } = await openSitting(viewer, {
      exerciseStoneId: z.string().parse(exerciseStoneId),
      agreedMinutes: z.int().nullable().parse(agreedMinutes),
      attempt: z.int().nullable().parse(attempt),
    });
    revalidatePath("/my-stones");
    return { sittingId };
  });
}
