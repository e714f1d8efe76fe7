import { after } from "next/server";
import { z } from "zod";
import { answerJson, readJson } from "@/app/api/answer-json";
import { requireViewer } from "@/lib/data/require-viewer";
import { parseInput } from "@/lib/plot/parse-input";
import { handIn } from "@/lib/workflows/hand-in";
import { scoreHandIn } from "@/lib/workflows/score-hand-in";

const BodySchema = z.strictObject({
  writerId: z.string(),
  lastSeq: z.int(),
  isTimeOut: z.boolean().default(false),
});

/** Hands in: `{ writerId, lastSeq, isTimeOut }` -> `{ handedInAt }`. It is scored once this is answered. */
export async function POST(request: Request, context: { params: Promise<{ sittingId: string }> }) {
  return answerJson(async () => {
    const viewer = await requireViewer();
    const body = parseInput(BodySchema, await readJson(request));
    const { sittingId } = await context.params;
    const { handedInAt, handInId } = await handIn(viewer, { sittingId, ...body });
    after(() => scoreHandIn(handInId).catch((thrown: unknown) => console.error(thrown)));
    return { handedInAt };
  });
}
