import { answerPaper } from "@/app/api/answer-paper";
import { DebriefDocument } from "@/components/paper/debrief-document";
import { getDebrief } from "@/lib/data/get-debrief";
import { requireViewer } from "@/lib/data/require-viewer";

/** A debrief on paper, by the very clause of its page: its student once it is released, staff once it is scored. */
export async function GET(request: Request, context: { params: Promise<{ sittingId: string }> }) {
  return answerPaper(request, "debrief.pdf", async (paper) => {
    const view = await getDebrief(await requireViewer(), (await context.params).sittingId);
    return <DebriefDocument view={view} paper={paper} />;
  });
}
