import { answerJson } from "@/app/api/answer-json";
import { listWatch } from "@/lib/data/list-watch";
import { requireViewer } from "@/lib/data/require-viewer";

/** The class now, for a browser that no stream comes through to. */
export async function GET() {
  return answerJson(async () => listWatch(await requireViewer()));
}
