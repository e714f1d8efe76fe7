import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase, type Transaction } from "@/lib/data/store/database";
import { listExerciseRows } from "@/lib/data/store/list-exercise-rows";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { type Overview, OverviewSchema } from "@/lib/plot/staff-view";
import { MISMATCHES } from "@/lib/plot/stone-check";
import type { Prisma } from "@/prisma/generated/client";

const OPEN_MISMATCH = {
  outcome: { in: [...MISMATCHES] },
  settledAt: null,
} satisfies Prisma.StoneCheckWhereInput;

/** Hand-in checks that contradict a label and are not settled, tray by tray. */
async function listMismatches(database: Transaction): Promise<Overview["mismatches"]> {
  const trays = await database.tray.findMany({
    where: { checks: { some: OPEN_MISMATCH } },
    orderBy: { name: "asc" },
    select: { id: true, name: true, _count: { select: { checks: { where: OPEN_MISMATCH } } } },
  });
  return trays.map(({ id, name, _count }) => ({ trayId: id, trayName: name, count: _count.checks }));
}

/** What staff see first: the program's trays and stones in numbers, and the exercises that are theirs to review. */
export async function getOverview(viewer: Viewer): Promise<Overview> {
  requireRole(viewer, "read-overview");
  const section = whereSectionInScope(viewer, "review-exercise");
  const database = getDatabase();
  return OverviewSchema.parse({
    trays: await database.tray.count(),
    stones: await database.stone.count(),
    withoutReference: await database.stone.count({ where: { references: { none: {} } } }),
    out: await database.handOut.count({ where: { returnedAt: null } }),
    overdue: await database.handOut.count({ where: { returnedAt: null, dueBackAt: { lt: new Date() } } }),
    mismatches: await listMismatches(database),
    exercises: await listExerciseRows(database, { section }),
  });
}
