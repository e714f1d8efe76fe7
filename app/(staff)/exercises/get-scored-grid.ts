import type { Viewer } from "@/lib/access/viewer";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import type { ReviewGrid } from "@/lib/plot/staff-view";
import { scorePending } from "@/lib/workflows/score-pending";

/** The grid of an exercise with every hand-in scored by what is in force now. Throws as `getReviewGrid` does. */
export async function getScoredGrid(viewer: Viewer, exerciseId: string): Promise<ReviewGrid> {
  const grid = await getReviewGrid(viewer, exerciseId);
  const { scored } = await scorePending({ exerciseId });
  return scored === 0 ? grid : getReviewGrid(viewer, exerciseId);
}
