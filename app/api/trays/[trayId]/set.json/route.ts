import { answerFile } from "@/app/api/answer-json";
import { exportTraySet } from "@/lib/data/export-tray-set";
import { requireViewer } from "@/lib/data/require-viewer";
import { writeExerciseSet } from "@/lib/exchange/write-exercise-set";

/** The tray as an exercise set, for download. Staff. */
export async function GET(_request: Request, context: { params: Promise<{ trayId: string }> }) {
  return answerFile("loupework-set.json", async () =>
    writeExerciseSet(await exportTraySet(await requireViewer(), (await context.params).trayId)),
  );
}
