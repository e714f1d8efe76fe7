import { toRefusal } from "@/app/api/answer-json";
import { getPhotoFile } from "@/lib/data/get-photo-file";
import { requireViewer } from "@/lib/data/require-viewer";
import { parseInput } from "@/lib/plot/parse-input";
import { PhotoSizeSchema } from "@/lib/plot/stone-photo";

/**
 * A photograph, `small` or `large`. The only door to the files. A browser may keep it but asks each time, so that one that is
 * hidden again, or another person at the same machine, is refused.
 */
export async function GET(
  request: Request,
  context: { params: Promise<{ photoId: string; size: string }> },
): Promise<Response> {
  try {
    const viewer = await requireViewer();
    const { photoId, size } = await context.params;
    const { bytes, tag } = await getPhotoFile(viewer, photoId, parseInput(PhotoSizeSchema, size));
    const headers = {
      "Content-Type": "image/jpeg",
      "Content-Disposition": "inline",
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "private, no-cache",
      ETag: tag,
    };
    if (request.headers.get("if-none-match") === tag) return new Response(null, { status: 304, headers });
    return new Response(bytes, { headers: { ...headers, "Content-Length": String(bytes.length) } });
  } catch (thrown) {
    return toRefusal(thrown);
  }
}
