import { requireSameOrigin } from "@/app/api/answer-json";
import { AppError } from "@/lib/base/app-error";

/**
 * The bytes of a request that sends a file. Read piece by piece and given up as soon as there are too many, so that nobody fills
 * the memory. Throws AppError `not-allowed` for one from elsewhere, `bad-input` for one that is too large or empty.
 */
export async function readBytes(request: Request, mostBytes: number): Promise<Uint8Array<ArrayBuffer>> {
  requireSameOrigin(request);
  const tooLarge = new AppError("bad-input", `The file is larger than ${mostBytes / 1_000_000} MB.`);
  if (Number(request.headers.get("content-length") ?? 0) > mostBytes) throw tooLarge;
  if (request.body === null) throw new AppError("bad-input", "There is no file in this request.");
  const pieces: Uint8Array[] = [];
  let count = 0;
  for await (const piece of request.body as unknown as AsyncIterable<Uint8Array>) {
    count += piece.length;
    if (count > mostBytes) throw tooLarge;
    pieces.push(piece);
  }
  return new Uint8Array(Buffer.concat(pieces));
}
