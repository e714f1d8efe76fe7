import { answerFile } from "@/app/api/answer-json";
import { exportPlots } from "@/lib/data/export-plots";
import { requireViewer } from "@/lib/data/require-viewer";
import { writePlots } from "@/lib/exchange/write-plots";

/** All plots that were handed in for the exercise, for download. Staff. */
export async function GET(_request: Request, context: { params: Promise<{ exerciseId: string }> }) {
  return answerFile("loupework-plots.json", async () =>
    writePlots(await exportPlots(await requireViewer(), (await context.params).exerciseId)),
  );
}
