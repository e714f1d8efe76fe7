import { answerPaper } from "@/app/api/answer-paper";
import { SectionDocument } from "@/components/paper/section-document";
import { requireViewer } from "@/lib/data/require-viewer";
import { getSectionReport } from "@/lib/workflows/get-section-report";

/** A section's report on paper, by the very clause of its page; of one exercise where the address names it. Staff. */
export async function GET(request: Request, context: { params: Promise<{ sectionId: string }> }) {
  const exerciseId = new URL(request.url).searchParams.get("exercise") ?? undefined;
  return answerPaper(request, "section-report.pdf", async (paper) => {
    const { sectionId } = await context.params;
    const report = await getSectionReport(await requireViewer(), { sectionId, exerciseId });
    return <SectionDocument report={report} paper={paper} />;
  });
}
