/** An EventSource that says what a test tells it to. */
import type { StreamSource } from "@/components/live/live-stream";

type Listener = (event: MessageEvent<string>) => void;

export class FakeSource implements StreamSource {
  static readonly opened: FakeSource[] = [];
  readyState = 0;
  onerror: ((event: Event) => void) | null = null;
  private readonly listeners = new Map<string, Listener[]>();

  constructor() {
    FakeSource.opened.push(this);
  }

  addEventListener(name: string, listener: Listener): void {
    this.listeners.set(name, [...(this.listeners.get(name) ?? []), listener]);
  }

  close(): void {
    this.readyState = 2;
  }

  /** Something comes in, unless it was closed. */
  say(name: string, data: unknown = {}): void {
    if (this.readyState === 2) return;
    this.readyState = 1;
    for (const listener of this.listeners.get(name) ?? []) {
      listener({ data: JSON.stringify(data) } as MessageEvent<string>);
    }
  }

  /** It fails: for good, as after a refusal, or to try again by itself. */
  fail(readyState: 0 | 2): void {
    this.readyState = readyState;
    this.onerror?.(new Event("error"));
  }
}

/** The source that was opened last. Throws when there is none. */
export function getLatestSource(): FakeSource {
  const source = FakeSource.opened.at(-1);
  if (source === undefined) throw new Error("no stream was opened");
  return source;
}
