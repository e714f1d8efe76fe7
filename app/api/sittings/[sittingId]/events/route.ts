import { z } from "zod";
import { answerBare, readJson } from "@/app/api/answer-json";
import { requireViewer } from "@/lib/data/require-viewer";
import { parseInput } from "@/lib/plot/parse-input";
import { SittingEventSchema } from "@/lib/plot/sitting-event";
import { SavedSchema } from "@/lib/plot/student-view";
import { saveEvents } from "@/lib/workflows/save-events";

const BodySchema = z.strictObject({ writerId: z.string(), events: z.array(SittingEventSchema) });

/** Appends steps of the bench to its log: `{ writerId, events }` -> `{ lastSeq, endsAt }`. */
export async function POST(request: Request, context: { params: Promise<{ sittingId: string }> }) {
  return answerBare(async () => {
    const viewer = await requireViewer();
    const body = parseInput(BodySchema, await readJson(request));
    const { sittingId } = await context.params;
    return SavedSchema.parse(await saveEvents(viewer, { sittingId, ...body }));
  });
}
