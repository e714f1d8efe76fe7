/**
 * Which writer this tab is. A browser keeps one writer id for each sitting, so that a closed tab is taken up again
 * without asking; a second tab finds it held by a living one and becomes a writer of its own.
 */

/** Long enough for another tab of the same browser to answer, short enough not to be noticed. */
const LISTEN_MS = 180;

interface Call {
  readonly kind: "who-holds" | "held" | "taken-over";
  readonly writerId: string;
  readonly nonce: number;
}

export interface HeldWriter {
  readonly writerId: string;
  /** Lets the next page of this browser be this writer too. */
  readonly keepId: () => void;
  /** Tells the other tabs of this browser that this one writes now. */
  readonly announceTakeOver: () => void;
  readonly release: () => void;
}

/** 128 random bits; `crypto.randomUUID` is missing where a school serves the program without TLS. */
function createWriterId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

function readKept(key: string): string | null {
  try {
    return window.localStorage.getItem(key);
  } catch {
    return null;
  }
}

function writeKept(key: string, writerId: string): void {
  try {
    window.localStorage.setItem(key, writerId);
  } catch {
    // A browser that keeps nothing asks again after a reload; nothing is lost by it.
  }
}

/** Finds this tab's writer id. `onTakenOver` is called when another tab of this browser takes the sitting over. */
export async function holdWriterId(sittingId: string, onTakenOver: () => void): Promise<HeldWriter> {
  const key = `loupework-writer:${sittingId}`;
  const channel = new BroadcastChannel(key);
  const nonce = crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
  let writerId = readKept(key) ?? createWriterId();
  let isSettled = false;
  let isHeldElsewhere = false;
  const say = (kind: Call["kind"]) => channel.postMessage({ kind, writerId, nonce } satisfies Call);

  channel.onmessage = ({ data }: MessageEvent<Call>) => {
    if (data.kind === "taken-over" && data.writerId !== writerId) onTakenOver();
    if (data.writerId !== writerId) return;
    // Of two tabs that ask at once, the one with the larger nonce keeps the id.
    if (data.kind === "who-holds" && (isSettled || nonce > data.nonce)) say("held");
    if (data.kind === "held" && !isSettled) isHeldElsewhere = true;
  };
  say("who-holds");
  await new Promise((resolve) => setTimeout(resolve, LISTEN_MS));
  if (isHeldElsewhere) writerId = createWriterId();
  isSettled = true;
  if (!isHeldElsewhere) writeKept(key, writerId);
  return {
    writerId,
    keepId: () => writeKept(key, writerId),
    announceTakeOver: () => say("taken-over"),
    release: () => channel.close(),
  };
}
