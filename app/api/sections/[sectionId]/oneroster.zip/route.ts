import { answerFile } from "@/app/api/answer-json";
import { requireViewer } from "@/lib/data/require-viewer";
import { writeOneRoster } from "@/lib/exchange/write-one-roster";
import { exportGradebook } from "@/lib/workflows/export-gradebook";

/** Line items and results of a section as OneRoster 1.2, for download. Staff. */
export async function GET(_request: Request, context: { params: Promise<{ sectionId: string }> }) {
  return answerFile("loupework-oneroster.zip", async () => {
    const gradebook = await exportGradebook(await requireViewer(), (await context.params).sectionId);
    return new Uint8Array(writeOneRoster(gradebook, new Date()));
  });
}
