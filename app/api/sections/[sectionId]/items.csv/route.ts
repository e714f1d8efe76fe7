import { answerFile } from "@/app/api/answer-json";
import { requireViewer } from "@/lib/data/require-viewer";
import { writeItems } from "@/lib/exchange/write-items";
import { exportItems } from "@/lib/workflows/export-items";

/** Every reference mark of every scored plot of a section, for download. Staff. */
export async function GET(_request: Request, context: { params: Promise<{ sectionId: string }> }) {
  return answerFile("loupework-items.csv", async () =>
    writeItems(await exportItems(await requireViewer(), (await context.params).sectionId)),
  );
}
