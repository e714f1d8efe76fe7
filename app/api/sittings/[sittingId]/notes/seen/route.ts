import { z } from "zod";
import { answerJson, readJson } from "@/app/api/answer-json";
import { requireViewer } from "@/lib/data/require-viewer";
import { parseInput } from "@/lib/plot/parse-input";
import { seeNote } from "@/lib/workflows/see-note";

const BodySchema = z.strictObject({ noteId: z.string() });

/** Keeps that the bench has shown a note: `{ noteId }` -> `{ seenAt }`. */
export async function POST(request: Request, context: { params: Promise<{ sittingId: string }> }) {
  return answerJson(async () => {
    const viewer = await requireViewer();
    const { noteId } = parseInput(BodySchema, await readJson(request));
    return seeNote(viewer, { sittingId: (await context.params).sittingId, noteId });
  });
}
