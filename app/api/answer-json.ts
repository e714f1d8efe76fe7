import { getFixedHeaders } from "@/app/api/fixed-headers";
import { AppError, type AppErrorCode, isAppError } from "@/lib/base/app-error";
import { readEnvironment } from "@/lib/data/read-environment";

/** The status of each refusal. */
const STATUS: Readonly<Record<AppErrorCode, number>> = {
  "bad-input": 422,
  "signed-out": 401,
  "not-allowed": 403,
  "reading-blind": 403,
  "not-found": 404,
  conflict: 409,
  "taken-over": 409,
  closed: 410,
  "too-many-attempts": 429,
  "no-room": 507,
  "not-set-up": 503,
};

/** No copy is kept anywhere: an answer is for one person at one moment. */
const HEADERS = { "Cache-Control": "no-store" };

/** A refusal as `{ code, message, faults }`; nothing of an unforeseen error leaves the server but that it happened. */
export function toRefusal(thrown: unknown): Response {
  if (isAppError(thrown)) {
    const { code, message, faults } = thrown;
    return Response.json({ code, message, faults }, { status: STATUS[code], headers: HEADERS });
  }
  console.error(thrown);
  const message = "Something failed on the server. What was saved is still saved; try again.";
  return Response.json({ code: "failed", message, faults: [] }, { status: 500, headers: HEADERS });
}

/** Answers with what the work gives, or with its refusal. */
export async function answerJson(work: () => Promise<unknown>): Promise<Response> {
  try {
    return Response.json(await work(), { headers: HEADERS });
  } catch (thrown) {
    return toRefusal(thrown);
  }
}

/** As `answerJson`, with all the headers of its own: for the routes that proxy.ts lets pass by. */
export async function answerBare(work: () => Promise<unknown>): Promise<Response> {
  const answer = await answerJson(work);
  for (const [name, value] of Object.entries(getFixedHeaders())) answer.headers.set(name, value);
  answer.headers.set("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'");
  return answer;
}

const FILE_TYPES: Readonly<Record<string, string>> = {
  json: "application/json; charset=utf-8",
  csv: "text/csv; charset=utf-8",
  zip: "application/zip",
};

/** Answers with a file to be kept, of the kind that its name's ending says (json, csv, zip), or with the work's refusal. */
export async function answerFile(
  fileName: string,
  work: () => Promise<string | Uint8Array<ArrayBuffer>>,
): Promise<Response> {
  try {
    const headers = {
      ...HEADERS,
      "Content-Type": FILE_TYPES[fileName.slice(fileName.lastIndexOf(".") + 1)] ?? "application/octet-stream",
      "Content-Disposition": `attachment; filename="${fileName}"`,
    };
    return new Response(await work(), { headers });
  } catch (thrown) {
    return toRefusal(thrown);
  }
}

/** A body larger than this is refused unread, bytes: a long batch of drawn outlines stays far below. */
const MOST_BYTES = 4_000_000;

/**
 * Refuses a request that another site made the browser send: its origin is neither the host that was asked nor the
 * address that the program is set to be reached at. Throws AppError `not-allowed`.
 */
export function requireSameOrigin(request: Request): void {
  const origin = request.headers.get("origin");
  const { url } = readEnvironment();
  const hosts = [
    request.headers.get("x-forwarded-host") ?? request.headers.get("host"),
    url === null ? null : new URL(url).host,
  ];
  if (origin !== null && URL.canParse(origin) && hosts.includes(new URL(origin).host)) return;
  throw new AppError("not-allowed", "This request did not come from the program's own pages.");
}

/**
 * The JSON body of a request that changes something. Throws AppError `not-allowed` for one from elsewhere, `bad-input`
 * for a body that is too large or no JSON.
 */
export async function readJson(request: Request): Promise<unknown> {
  requireSameOrigin(request);
  const refuse = (message: string) => new AppError("bad-input", message);
  if (!(request.headers.get("content-type") ?? "").startsWith("application/json")) {
    throw refuse("The body must be JSON.");
  }
  if (Number(request.headers.get("content-length") ?? 0) > MOST_BYTES) throw refuse("The body is too large.");
  const text = await request.text();
  if (text.length > MOST_BYTES) throw refuse("The body is too large.");
  try {
    return JSON.parse(text);
  } catch {
    throw refuse("The body is no JSON.");
  }
}
