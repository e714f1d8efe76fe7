import { answerPaper } from "@/app/api/answer-paper";
import { WorksheetDocument } from "@/components/paper/worksheet-document";
import { getTrayWorksheets } from "@/lib/data/get-tray-worksheets";
import { requireViewer } from "@/lib/data/require-viewer";

/** Blank worksheets of a tray's stones. Staff. */
export async function GET(request: Request, context: { params: Promise<{ trayId: string }> }) {
  return answerPaper(request, "worksheets.pdf", async (paper) => {
    const view = await getTrayWorksheets(await requireViewer(), (await context.params).trayId);
    return <WorksheetDocument view={view} paper={paper} />;
  });
}
