import type { Viewer } from "@/lib/access/viewer";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import type { ReviewGrid } from "@/lib/plot/staff-view";
import { handInOverdue } from "@/lib/workflows/hand-in-overdue";
import { scorePending } from "@/lib/workflows/score-pending";

/** The grid of an exercise with every stone that ran out of time handed in, and every hand-in scored by what is in force now. Throws as `getReviewGrid` does. */
export async function getScoredGrid(viewer: Viewer, exerciseId: string): Promise<ReviewGrid> {
  const grid = await getReviewGrid(viewer, exerciseId);
  const { handedIn } = await handInOverdue({ exerciseId });
  const { scored } = await scorePending({ exerciseId });
  return scored + handedIn === 0 ? grid : getReviewGrid(viewer, exerciseId);
}
