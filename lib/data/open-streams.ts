import "server-only";

interface Streams {
  readonly ends: Set<() => void>;
  isClosed: boolean;
}

// One per process: the framework loads this file once for pages and once for routes.
const holder = globalThis as typeof globalThis & { loupeworkStreams?: Streams };

function getStreams(): Streams {
  holder.loupeworkStreams ??= { ends: new Set(), isClosed: false };
  return holder.loupeworkStreams;
}

/** Keeps what ends an open stream, so that the server can stop; ends it at once when the server is stopping. */
export function keepStream(end: () => void): () => void {
  const { ends, isClosed } = getStreams();
  if (isClosed) {
    end();
    return () => {};
  }
  ends.add(end);
  return () => {
    ends.delete(end);
  };
}

/** Ends every open stream, and any that is opened later: the server waits for them before it stops. */
export function closeStreams(): void {
  const streams = getStreams();
  streams.isClosed = true;
  for (const end of streams.ends) end();
  streams.ends.clear();
}
