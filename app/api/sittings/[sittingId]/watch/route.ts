import { answerJson } from "@/app/api/answer-json";
import { getBenchWatch } from "@/lib/data/get-bench-watch";
import { requireViewer } from "@/lib/data/require-viewer";

/** A plot as it stands, with its reference, for staff. */
export async function GET(_request: Request, context: { params: Promise<{ sittingId: string }> }) {
  return answerJson(async () => getBenchWatch(await requireViewer(), (await context.params).sittingId));
}
