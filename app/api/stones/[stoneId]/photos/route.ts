import { answerJson } from "@/app/api/answer-json";
import { readBytes } from "@/app/api/read-bytes";
import { requireViewer } from "@/lib/data/require-viewer";
import { MOST_PHOTO_BYTES } from "@/lib/plot/stone-photo";
import { addPhoto } from "@/lib/workflows/add-photo";

/** Adds a photograph to a stone: the picture's bytes as the body -> `{ photoId }`. Whoever may edit the tray. */
export async function POST(request: Request, context: { params: Promise<{ stoneId: string }> }) {
  return answerJson(async () => {
    const viewer = await requireViewer();
    const { stoneId } = await context.params;
    return addPhoto(viewer, { stoneId, bytes: await readBytes(request, MOST_PHOTO_BYTES) });
  });
}
