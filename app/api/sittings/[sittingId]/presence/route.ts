import { z } from "zod";
import { answerBare, readJson } from "@/app/api/answer-json";
import { requireViewer } from "@/lib/data/require-viewer";
import { StudentNotesSchema } from "@/lib/plot/bench-note";
import { parseInput } from "@/lib/plot/parse-input";
import { noteBench } from "@/lib/workflows/note-bench";

const BodySchema = z.strictObject({ presence: z.enum(["here", "away", "gone"]) });

/** Says that a bench is open, hidden or left: `{ presence }` -> `{ notes }`, those that it has not seen. */
export async function POST(request: Request, context: { params: Promise<{ sittingId: string }> }) {
  return answerBare(async () => {
    const viewer = await requireViewer();
    const { presence } = parseInput(BodySchema, await readJson(request));
    const { sittingId } = await context.params;
    return StudentNotesSchema.parse(await noteBench(viewer, { sittingId, presence }));
  });
}
