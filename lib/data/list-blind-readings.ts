import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { type BlindReading, BlindReadingSchema } from "@/lib/plot/second-reading";

/** The viewer's own second readings that are neither handed in nor given up, the oldest first. */
export async function listBlindReadings(viewer: Viewer): Promise<BlindReading[]> {
  requireRole(viewer, "second-read");
  const rows = await getDatabase().secondReading.findMany({
    where: { readerId: viewer.userId, state: "drawing" },
    orderBy: { createdAt: "asc" },
    include: { stone: { include: { tray: { select: { name: true } } } } },
  });
  return rows.map(({ id, stone, createdAt }) =>
    BlindReadingSchema.parse({
      readingId: id,
      stoneId: stone.id,
      trayId: stone.trayId,
      trayName: stone.tray.name,
      label: stone.label,
      createdAt: createdAt.toISOString(),
    }),
  );
}
