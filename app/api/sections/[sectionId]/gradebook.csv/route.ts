import { answerFile } from "@/app/api/answer-json";
import { requireViewer } from "@/lib/data/require-viewer";
import { writeGradebook } from "@/lib/exchange/write-gradebook";
import { exportGradebook } from "@/lib/workflows/export-gradebook";

/** Points of a section by exercise, for download. Staff. */
export async function GET(_request: Request, context: { params: Promise<{ sectionId: string }> }) {
  return answerFile("loupework-gradebook.csv", async () =>
    writeGradebook(await exportGradebook(await requireViewer(), (await context.params).sectionId)),
  );
}
