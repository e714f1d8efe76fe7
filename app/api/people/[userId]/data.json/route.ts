import { answerFile } from "@/app/api/answer-json";
import { exportPersonData } from "@/lib/data/export-person-data";
import { requireViewer } from "@/lib/data/require-viewer";
import { formatJson } from "@/lib/exchange/format-json";

/** Everything that is held of a person, for download: their own, or anybody's for a director. */
export async function GET(_request: Request, context: { params: Promise<{ userId: string }> }) {
  return answerFile("loupework-my-data.json", async () =>
    formatJson(await exportPersonData(await requireViewer(), (await context.params).userId)),
  );
}
