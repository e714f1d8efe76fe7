import { getDatabase } from "@/lib/data/store/database";
import { runRescore } from "@/lib/workflows/run-rescore";

/** Goes on with every rescore that an end of the process cut off, one after another, the oldest first. On start. */
export async function resumeRescores(): Promise<{ resumed: number }> {
  const cutOff = await getDatabase().rescore.findMany({
    where: { state: "working" },
    orderBy: { startedAt: "asc" },
    select: { id: true },
  });
  for (const { id } of cutOff) await runRescore(id);
  return { resumed: cutOff.length };
}
