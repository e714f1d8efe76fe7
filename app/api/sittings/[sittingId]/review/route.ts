import { answerJson } from "@/app/api/answer-json";
import { getReview } from "@/lib/data/get-review";
import { requireViewer } from "@/lib/data/require-viewer";

/** A scored hand-in for review; the review desk fetches the next one before it is asked for. Staff. */
export async function GET(_request: Request, context: { params: Promise<{ sittingId: string }> }) {
  return answerJson(async () => getReview(await requireViewer(), (await context.params).sittingId));
}
