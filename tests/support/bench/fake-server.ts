/** What a save client stands against in its tests: a server and a browser's store, without a network or a disk. */
import { afterEach, beforeEach, vi } from "vitest";
import type { BenchDoor, DoorAnswer } from "@/components/bench/bench-door";
import type { EventStore } from "@/components/bench/event-store";
import { type EventBody, SaveClient } from "@/components/bench/save-client";
import { rebuildSitting, type SittingEvent } from "@/lib/plot/sitting-event";

export const dot = (id: string): EventBody => ({
  kind: "marks",
  put: [{ id, view: "crown", characteristic: "crystal", shape: { kind: "dot", at: [0.1, 0.1] } }],
  removed: [],
});

/** A server that holds a log and obeys the contract: idempotent, one writer, no gaps. */
export class FakeServer {
  log: SittingEvent[] = [];
  writer: string | null = null;
  isDown = false;
  isClosed = false;
  isFull = false;
  handIns = 0;
  /** What the answer to a hand-in is, where it is no plain yes. */
  handInRefusal: string | null = null;
  /** Loses the answer, not the work. */
  dropsAnswers = false;
  saves = 0;

  door(writerId: string): BenchDoor {
    const answer = <Value>(act: () => DoorAnswer<Value>): Promise<DoorAnswer<Value>> => {
      if (this.isDown) return Promise.resolve({ kind: "unreached" });
      const given = act();
      return Promise.resolve(this.dropsAnswers ? { kind: "unreached" } : given);
    };
    const refuse = (code: string): DoorAnswer<never> => ({
      kind: "refused",
      refusal: { code, message: code, faults: [] },
    });
    return {
      claim: (takeOver) =>
        answer<{ lastSeq: number }>(() => {
          if (this.isClosed) return refuse("closed");
          if (this.writer !== null && this.writer !== writerId && !takeOver) return refuse("taken-over");
          this.writer = writerId;
          return { kind: "done", value: { lastSeq: this.log.length } };
        }),
      save: (events) =>
        answer<{ lastSeq: number }>(() => {
          this.saves += 1;
          if (this.isFull) return refuse("no-room");
          const fresh = events.filter(({ seq }) => seq > this.log.length);
          if (fresh.length > 0 && this.isClosed) return refuse("closed");
          if (fresh.length > 0 && this.writer !== writerId) return refuse("taken-over");
          for (const event of events) {
            const known = this.log[event.seq - 1];
            if (known === undefined && event.seq !== this.log.length + 1) return refuse("conflict");
            if (known !== undefined && JSON.stringify(known) !== JSON.stringify(event))
              return refuse("conflict");
            if (known === undefined) this.log.push(event);
          }
          return { kind: "done", value: { lastSeq: this.log.length } };
        }),
      handIn: () =>
        answer<{ handedInAt: string }>(() => {
          if (this.handInRefusal !== null) return refuse(this.handInRefusal);
          this.handIns += 1;
          return { kind: "done", value: { handedInAt: "2026-11-25T10:00:00.000Z" } };
        }),
    };
  }
}

/** A browser's store that survives the client that wrote it. */
export class FakeStore implements EventStore {
  readonly rows = new Map<number, SittingEvent>();
  isBroken = false;
  private do<Value>(act: () => Value): Promise<Value> {
    return this.isBroken ? Promise.reject(new Error("no room")) : Promise.resolve(act());
  }
  list = () => this.do(() => [...this.rows.values()].sort((a, b) => a.seq - b.seq));
  put = (events: readonly SittingEvent[]) =>
    this.do(() => {
      for (const event of events) this.rows.set(event.seq, event);
    });
  removeUpTo = (seq: number) =>
    this.do(() => {
      for (const key of [...this.rows.keys()]) if (key <= seq) this.rows.delete(key);
    });
  clear = () => this.do(() => this.rows.clear());
}

let clockMs = 0;
export const stale = vi.fn();

export function createClient(server: FakeServer, store: FakeStore, writerId = "tab-a") {
  return new SaveClient({
    base: rebuildSitting(server.log),
    door: server.door(writerId),
    store,
    onLogReaches: () => {},
    sinceOpenedMs: () => {
      clockMs += 10;
      return clockMs;
    },
    onStale: stale,
  });
}

export const settle = () => vi.advanceTimersByTimeAsync(0);
export const markIds = (client: SaveClient) => client.getState().sitting.plot.marks.map(({ id }) => id);

/** Each test of the file begins with clocks that stand and are moved by hand. */
export function standClocksStill(): void {
  beforeEach(() => {
    vi.useFakeTimers();
    clockMs = 0;
    stale.mockClear();
  });
  afterEach(() => {
    vi.useRealTimers();
  });
}
