import { setImmediate as giveWay } from "node:timers/promises";
import { getDatabase } from "@/lib/data/store/database";
import { listDueHandIns } from "@/lib/data/store/find-hand-in";
import { scoreHandIn } from "@/lib/workflows/score-hand-in";

/**
 * Scores every hand-in that has no result yet, of one exercise or of all: on start, and before staff read a grid or a
 * debrief, for hand-ins whose scoring was cut off or waited for a reference. Gives way to other work between two. One that fails is told to the log by its id, and the rest go on.
 */
export async function scorePending(
  within: { readonly exerciseId?: string } = {},
): Promise<{ scored: number; failed: number }> {
  let scored = 0;
  let failed = 0;
  for (const handInId of await listDueHandIns(getDatabase(), within.exerciseId)) {
    try {
      if (await scoreHandIn(handInId)) scored += 1;
    } catch (thrown) {
      failed += 1;
      console.error(`hand-in ${handInId} could not be scored`, thrown);
    }
    await giveWay();
  }
  return { scored, failed };
}
