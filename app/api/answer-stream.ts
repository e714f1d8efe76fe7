import { toRefusal } from "@/app/api/answer-json";
import type { Viewer } from "@/lib/access/viewer";
import { keepStream } from "@/lib/data/open-streams";
import { requireLastingViewer } from "@/lib/data/require-viewer";

/** What goes into a stream: a name and a value, as one server-sent event. */
export type Send = (event: string, data: unknown) => void;

export interface OpenedStream {
  readonly end: () => void;
  /** Done each time that the session was found to hold still. */
  readonly onCheck?: () => Promise<void>;
}

export interface StreamWork {
  /** Begins to send; throws AppError for what is not this viewer's. */
  readonly open: (viewer: Viewer, send: Send) => Promise<OpenedStream>;
  /** How often the session is asked after, ms. */
  readonly checkMs: number;
}

const HEADERS = {
  "Content-Type": "text/event-stream; charset=utf-8",
  // No copy is kept, and nothing between here and the browser may gather it up or compress it.
  "Cache-Control": "no-store, no-transform",
  "X-Accel-Buffering": "no",
};

/** A beat tells the browser that the stream comes through; a proxy closes what is silent for long. */
const BEAT_MS = 5000;
/** A browser that takes nothing of so many messages has gone without a word. */
const MOST_WAITING = 500;
const RETRY_MS = 2000;

/** A body to which events are sent until it is ended from either side. */
function createBody(onEnd: () => void): { body: ReadableStream<Uint8Array>; send: Send; end: () => void } {
  const encoder = new TextEncoder();
  let controller: ReadableStreamDefaultController<Uint8Array> | null = null;
  const body = new ReadableStream<Uint8Array>(
    {
      start(made) {
        controller = made;
        made.enqueue(encoder.encode(`retry: ${RETRY_MS}\n\n`));
      },
      cancel() {
        controller = null;
        onEnd();
      },
    },
    { highWaterMark: MOST_WAITING },
  );
  const end = () => {
    controller?.close();
    controller = null;
    onEnd();
  };
  const send: Send = (event, data) => {
    if (controller === null) return;
    if ((controller.desiredSize ?? 0) <= 0) return end();
    controller.enqueue(encoder.encode(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`));
  };
  return { body, send, end };
}

/**
 * Answers with server-sent events for as long as the browser listens and the session holds; the session is asked
 * after again and again. Ends with `event: signed-out` when it holds no more. A refusal is answered as JSON.
 */
export async function answerStream(request: Request, { open, checkMs }: StreamWork): Promise<Response> {
  const ends = new Set<() => void>();
  const { body, send, end } = createBody(() => {
    for (const one of ends) one();
    ends.clear();
  });
  try {
    const { viewer, isStillSignedIn } = await requireLastingViewer();
    const { end: close, onCheck } = await open(viewer, send);
    ends.add(close);
    const check = async () => {
      if (await isStillSignedIn()) return onCheck?.();
      send("signed-out", {});
      end();
    };
    const beat = setInterval(() => send("beat", {}), BEAT_MS);
    const asking = setInterval(() => check().catch((thrown: unknown) => console.error(thrown)), checkMs);
    ends.add(() => {
      clearInterval(beat);
      clearInterval(asking);
    });
    request.signal.addEventListener("abort", end, { once: true });
    ends.add(keepStream(end));
    if (request.signal.aborted) end();
    return new Response(body, { headers: HEADERS });
  } catch (thrown) {
    end();
    return toRefusal(thrown);
  }
}
