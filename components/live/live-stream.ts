/**
 * A stream of server-sent events that tells whether it comes through. A stream can be open and yet silent: something
 * on the way gathers it up, or the other end is gone without a word. So what counts is what is heard. No React.
 *
 * 1. Live from the first event on; the server beats every five seconds.
 * 2. Not live after an error, or a silence longer than that; whoever listens then asks in another way.
 * 3. It is opened again for as long as it is not stopped, and is live again with the next event.
 */

/** As much of an EventSource as is used here. */
export interface StreamSource {
  readonly readyState: number;
  onerror: ((event: Event) => void) | null;
  addEventListener(name: string, listener: (event: MessageEvent<string>) => void): void;
  close(): void;
}

export interface LiveStreamParts {
  readonly openSource: () => StreamSource;
  /** The names of the events that are heard, besides beats. */
  readonly names: readonly string[];
  readonly hear: (name: string, data: unknown) => void;
  readonly setLive: (isLive: boolean) => void;
  /** The session is over: nothing more will come. */
  readonly end: () => void;
}

/** How long a stream may take to say its first word, ms. */
export const PATIENCE_MS = 4000;
/** A silence longer than this, ms: two beats have not come. */
export const SILENCE_MS = 12_000;
/** How long it rests before it is opened again, ms. */
export const REST_MS = 15_000;

const CLOSED = 2;

export class LiveStream {
  private source: StreamSource | null = null;
  private timer: ReturnType<typeof setTimeout> | null = null;
  private isLive = false;

  constructor(private readonly parts: LiveStreamParts) {}

  readonly start = (): void => {
    this.stop();
    const source = this.parts.openSource();
    this.source = source;
    this.wait(PATIENCE_MS, this.rest);
    for (const name of this.parts.names) {
      source.addEventListener(name, ({ data }) => {
        this.hearAny();
        this.parts.hear(name, JSON.parse(data));
      });
    }
    source.addEventListener("beat", this.hearAny);
    source.addEventListener("signed-out", () => {
      this.stop();
      this.parts.end();
    });
    source.onerror = () => {
      this.setLive(false);
      if (source.readyState === CLOSED) this.rest();
      else this.wait(SILENCE_MS, this.rest);
    };
  };

  readonly stop = (): void => {
    this.source?.close();
    this.source = null;
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
    this.setLive(false);
  };

  private readonly hearAny = (): void => {
    this.wait(SILENCE_MS, this.rest);
    this.setLive(true);
  };

  private readonly rest = (): void => {
    this.stop();
    this.wait(REST_MS, this.start);
  };

  private wait(ms: number, then: () => void): void {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = setTimeout(then, ms);
  }

  private setLive(isLive: boolean): void {
    if (this.isLive === isLive) return;
    this.isLive = isLive;
    this.parts.setLive(isLive);
  }
}
