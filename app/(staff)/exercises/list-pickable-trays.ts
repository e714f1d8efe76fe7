import type { PickableTray } from "@/components/staff/stone-picker";
import type { Viewer } from "@/lib/access/viewer";
import { getTray } from "@/lib/data/get-tray";
import { listTrays } from "@/lib/data/list-trays";

/** Every tray that holds a stone, with what a picker shows of each. */
export async function listPickableTrays(viewer: Viewer): Promise<PickableTray[]> {
  const rows = await listTrays(viewer);
  const trays = await Promise.all(
    rows.filter(({ stoneCount }) => stoneCount > 0).map(({ trayId }) => getTray(viewer, trayId)),
  );
  return trays.map(({ trayId, name, stones }) => ({
    trayId,
    name,
    stones: stones.map(({ stoneId, label, clarity, referenceVersion }) => ({
      stoneId,
      label,
      clarity,
      hasReference: referenceVersion > 0,
    })),
  }));
}
