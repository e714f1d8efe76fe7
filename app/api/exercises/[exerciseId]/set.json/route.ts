import { answerFile } from "@/app/api/answer-json";
import { exportExerciseSet } from "@/lib/data/export-exercise-set";
import { requireViewer } from "@/lib/data/require-viewer";
import { writeExerciseSet } from "@/lib/exchange/write-exercise-set";

/** The exercise as an exercise set, for download. Staff. */
export async function GET(_request: Request, context: { params: Promise<{ exerciseId: string }> }) {
  return answerFile("loupework-set.json", async () =>
    writeExerciseSet(await exportExerciseSet(await requireViewer(), (await context.params).exerciseId)),
  );
}
