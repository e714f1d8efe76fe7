import { answerPaper } from "@/app/api/answer-paper";
import { WorksheetDocument } from "@/components/paper/worksheet-document";
import { getWorksheets } from "@/lib/data/get-worksheets";
import { requireViewer } from "@/lib/data/require-viewer";

/** Blank worksheets of an exercise's stones: staff who review it, and its students while it is open. */
export async function GET(request: Request, context: { params: Promise<{ exerciseId: string }> }) {
  return answerPaper(request, "worksheets.pdf", async (paper) => {
    const view = await getWorksheets(await requireViewer(), (await context.params).exerciseId);
    return <WorksheetDocument view={view} paper={paper} />;
  });
}
