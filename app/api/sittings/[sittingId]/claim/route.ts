import { z } from "zod";
import { answerJson, readJson } from "@/app/api/answer-json";
import { requireViewer } from "@/lib/data/require-viewer";
import { parseInput } from "@/lib/plot/parse-input";
import { claimBench } from "@/lib/workflows/claim-bench";

const BodySchema = z.strictObject({ writerId: z.string(), takeOver: z.boolean() });

/** Makes this tab the one that writes: `{ writerId, takeOver }` -> `{ lastSeq, writerId, endsAt }`. */
export async function POST(request: Request, context: { params: Promise<{ sittingId: string }> }) {
  return answerJson(async () => {
    const viewer = await requireViewer();
    const body = parseInput(BodySchema, await readJson(request));
    return claimBench(viewer, { sittingId: (await context.params).sittingId, ...body });
  });
}
