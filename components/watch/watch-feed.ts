/** The class as a browser knows it: by the stream while it comes through, by asking again and again while not. No React. */
import { LiveStream, type StreamSource } from "@/components/live/live-stream";
import { type Watch, WatchChangeSchema, type WatchRow, WatchSchema } from "@/lib/plot/watch-view";

/** `stream`: told at once; `asking`: asked every two seconds; `lost`: the server is not reached; `ended`: signed out. */
export type FeedMode = "opening" | "stream" | "asking" | "lost" | "ended";

export interface FeedState {
  readonly mode: FeedMode;
  readonly rows: ReadonlyMap<string, WatchRow>;
  /** What the server's clock is ahead of `nowMs`, ms. */
  readonly aheadMs: number;
}

export type WatchAnswer =
  | { readonly kind: "whole"; readonly watch: unknown }
  | { readonly kind: "unreached" }
  /** Signed out, or not allowed any more. */
  | { readonly kind: "refused" };

export interface FeedParts {
  readonly first: Watch;
  readonly openSource: () => StreamSource;
  readonly ask: () => Promise<WatchAnswer>;
  readonly nowMs: () => number;
}

/** Between two questions while the stream does not come through, ms. */
export const ASK_MS = 2000;

const byId = (rows: readonly WatchRow[]) => new Map(rows.map((row) => [row.sittingId, row]));

export class WatchFeed {
  private state: FeedState;
  private asking: ReturnType<typeof setTimeout> | null = null;
  private isStopped = true;
  private readonly stream: LiveStream;
  private readonly listeners = new Set<() => void>();

  constructor(private readonly parts: FeedParts) {
    const { first, nowMs } = parts;
    this.state = { mode: "opening", rows: byId(first.rows), aheadMs: Date.parse(first.readAt) - nowMs() };
    this.stream = new LiveStream({
      openSource: parts.openSource,
      names: ["whole", "change"],
      hear: this.hear,
      setLive: (isLive) => (isLive ? this.goLive() : this.goAsking()),
      end: this.end,
    });
  }

  readonly getState = (): FeedState => this.state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  readonly start = (): void => {
    this.isStopped = false;
    this.stream.start();
    // A stream that says nothing at first is not an error yet: ask only once its patience is over.
    this.askLater(ASK_MS * 2);
  };

  readonly stop = (): void => {
    this.isStopped = true;
    this.stream.stop();
    this.stopAsking();
  };

  private set(part: Partial<FeedState>): void {
    this.state = { ...this.state, ...part };
    for (const listener of this.listeners) listener();
  }

  private readonly hear = (name: string, data: unknown): void => {
    if (name === "whole") this.takeWhole(data);
    else this.takeChange(data);
  };

  private toAhead(readAt: string): number {
    return Date.parse(readAt) - this.parts.nowMs();
  }

  private takeWhole(data: unknown): void {
    const { readAt, rows } = WatchSchema.parse(data);
    this.set({ rows: byId(rows), aheadMs: this.toAhead(readAt) });
  }

  private takeChange(data: unknown): void {
    const { readAt, put, removed } = WatchChangeSchema.parse(data);
    const rows = new Map(this.state.rows);
    for (const sittingId of removed) rows.delete(sittingId);
    for (const row of put) rows.set(row.sittingId, row);
    this.set({ rows, aheadMs: this.toAhead(readAt) });
  }

  private goLive(): void {
    this.stopAsking();
    this.set({ mode: "stream" });
  }

  private goAsking(): void {
    if (this.isStopped || this.state.mode === "ended") return;
    this.askLater(0);
  }

  private readonly end = (): void => {
    this.stop();
    this.set({ mode: "ended" });
  };

  private stopAsking(): void {
    if (this.asking !== null) clearTimeout(this.asking);
    this.asking = null;
  }

  private askLater(ms: number): void {
    this.stopAsking();
    this.asking = setTimeout(() => void this.askOnce(), ms);
  }

  private async askOnce(): Promise<void> {
    const turn = this.asking;
    const answer = await this.parts.ask();
    // The stream has come through meanwhile, or nobody listens any more: what it says is newer.
    if (this.isStopped || this.asking !== turn) return;
    if (answer.kind === "refused") return this.end();
    if (answer.kind === "whole") {
      this.takeWhole(answer.watch);
      this.set({ mode: "asking" });
    } else this.set({ mode: "lost" });
    this.askLater(ASK_MS);
  }
}
