import { answerStream } from "@/app/api/answer-stream";
import { followMyNotes } from "@/lib/data/follow-my-notes";
import { StudentNotesSchema } from "@/lib/plot/bench-note";

const CHECK_MS = 30_000;

/** The notes to a student's own bench: `event: notes` with all that are unseen, at once and with each new one. */
export async function GET(request: Request, context: { params: Promise<{ sittingId: string }> }) {
  const { sittingId } = await context.params;
  return answerStream(request, {
    checkMs: CHECK_MS,
    open: async (viewer, send) => ({
      end: await followMyNotes(viewer, sittingId, (notes) =>
        send("notes", StudentNotesSchema.parse({ notes })),
      ),
    }),
  });
}
