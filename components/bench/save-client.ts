/**
 * Saves a sitting as it is done. Every change is an event with the next `seq`: applied here at once, kept in the
 * browser, sent at once in order, and forgotten by the browser only when the server has acknowledged it. No React.
 *
 * 1. One request at a time; what is recorded meanwhile goes with the next.
 * 2. "Saved" is shown only while nothing waits for an acknowledgement.
 * 3. An unreached server is asked again, at growing intervals, for as long as the page is open.
 * 4. A refusal that passes (signed out, no room on the server's disk) is shown and asked again, like an unreached server.
 * 5. When the time runs out, nothing more is recorded; what waits is sent, and the sitting is handed in.
 * 6. After a refusal because somebody else writes, nothing more is recorded here; what had not been saved is
 *    stranded, and the student says whether it is added on top or left out. Until then nothing is recorded over it.
 */
import { Backoff } from "@/components/bench/backoff";
import type { BenchDoor, DoorAnswer, Refusal } from "@/components/bench/bench-door";
import type { EventStore } from "@/components/bench/event-store";
import { guardEventStore } from "@/components/bench/guard-event-store";
import { findRefusalWord, type SaveState } from "@/components/bench/save-state";
import { applySittingEvent, type SittingEvent, type SittingState } from "@/lib/plot/sitting-event";

type WithoutStamp<One> = One extends SittingEvent ? Omit<One, "seq" | "atMs"> : never;
/** An event without its place and time. */
export type EventBody = WithoutStamp<SittingEvent>;

export interface SaveClientParts {
  /** The sitting as the page was given it. */
  readonly base: SittingState;
  readonly door: BenchDoor;
  readonly store: EventStore;
  readonly sinceOpenedMs: () => number;
  /** Told how far the log has come already, ms since the opening: nothing that follows is earlier. */
  readonly onLogReaches: (sinceOpenedMs: number) => void;
  /** The server holds more than the page was given: only a fresh page can show it. */
  readonly onStale: () => void;
}

const BATCH = 100;
/** Somebody who pressed Hand in waits this long for what is not saved yet, ms. */
const HAND_IN_PATIENCE_MS = 8000;

/** Refusals that may pass by themselves or by something that somebody does elsewhere. */
const PASSING = ["signed-out", "too-many-attempts", "no-room"];

export class SaveClient {
  private state: SaveState;
  private queue: readonly SittingEvent[] = [];
  private isClaimed = false;
  private isDisposed = false;
  /** The time ran out: nothing is recorded, what waits is still sent. */
  private isEnding = false;
  private pumping: Promise<void> | null = null;
  private readonly listeners = new Set<() => void>();
  private readonly backoff = new Backoff();
  private readonly store: EventStore;

  constructor(private readonly parts: SaveClientParts) {
    this.store = guardEventStore(parts.store, () => this.set({ canKeep: false }));
    this.state = {
      word: "opening",
      sitting: parts.base,
      generation: 0,
      unsavedCount: 0,
      canKeep: true,
      canWrite: false,
      stranded: [],
      mustDecide: false,
      refusal: null,
    };
  }

  readonly getState = (): SaveState => this.state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  /** Claims the sitting and brings back what this browser had kept of it. */
  async open(takeOver = false): Promise<void> {
    const { base, door, onStale } = this.parts;
    const kept = await this.store.list();
    const answer = await door.claim(takeOver);
    if (this.isDisposed) return;
    if (answer.kind === "refused") {
      this.queue = kept.filter(({ seq }) => seq > base.lastSeq);
      this.stop(answer.refusal);
      return;
    }
    if (answer.kind === "done") {
      this.isClaimed = true;
      if (answer.value.lastSeq > base.lastSeq) {
        onStale();
        return;
      }
    }
    const later = kept.filter(({ seq }) => seq > base.lastSeq);
    const isOursStill = await this.settleOld(kept.filter(({ seq }) => seq <= base.lastSeq));
    if (this.isDisposed) return;
    if (!isOursStill || later.some(({ seq }, index) => seq !== base.lastSeq + 1 + index)) {
      this.set({ word: "unsaved", stranded: kept, mustDecide: true });
      return;
    }
    this.queue = later;
    this.parts.onLogReaches(later.at(-1)?.atMs ?? 0);
    const sitting = later.reduce(applySittingEvent, base);
    this.set({ sitting, canWrite: true, refusal: null, word: this.getBusyWord(), generation: 1 });
    void this.pump();
  }

  /** Records a change; false when nothing may be recorded here now. */
  readonly record = (body: EventBody): boolean => {
    if (!this.state.canWrite) return false;
    const stamp = { seq: this.state.sitting.lastSeq + 1, atMs: this.parts.sinceOpenedMs() };
    const event: SittingEvent = { ...body, ...stamp };
    this.queue = [...this.queue, event];
    const word = this.state.word === "saved" ? "saving" : this.state.word;
    this.set({ sitting: applySittingEvent(this.state.sitting, event), word });
    void this.store.put([event]);
    void this.pump();
    return true;
  };

  /** Does not wait for the next try: the network is back, or somebody looks at the page again. */
  readonly retryNow = (): void => this.backoff.cutShort();

  /** Asks whether this is still the one that writes. A save under way asks the same. */
  readonly check = async (): Promise<void> => {
    if (!this.state.canWrite || this.pumping !== null) return;
    const answer = await this.parts.door.claim(false);
    if (answer.kind === "refused" && !this.isDisposed) this.stop(answer.refusal);
  };

  /** Another tab of this browser has said that it writes now. */
  readonly yieldToOther = (): void => {
    if (this.state.canWrite) this.stop({ code: "taken-over", message: "", faults: [] });
  };

  /** Adds the stranded changes on top of what is there, with new places in the log. */
  readonly addStranded = async (): Promise<void> => {
    const { stranded, mustDecide } = this.state;
    if (!mustDecide) return;
    await this.store.clear();
    this.set({ stranded: [], mustDecide: false, canWrite: true, word: "saving" });
    for (const { seq: _seq, atMs: _atMs, ...body } of stranded) this.record(body);
    this.set({ generation: this.state.generation + 1 });
  };

  /** Leaves the stranded changes out for good. Where they could be decided on, the bench goes on without them. */
  readonly dropStranded = async (): Promise<void> => {
    await this.store.clear();
    const { mustDecide } = this.state;
    this.set({ stranded: [], mustDecide: false, ...(mustDecide ? { canWrite: true, word: "saved" } : {}) });
  };

  /**
   * Sends what waits, then hands in. Nothing is handed in before all is saved; where that does not come about soon, it is
   * given up, so that nothing is handed in by itself when nobody thinks of it any more.
   */
  readonly handIn = async (): Promise<DoorAnswer<{ handedInAt: string }>> => {
    this.backoff.cutShort();
    let timer: ReturnType<typeof setTimeout> | undefined;
    const patience = new Promise<void>((resolve) => {
      timer = setTimeout(resolve, HAND_IN_PATIENCE_MS);
    });
    await Promise.race([this.pump(), patience]);
    clearTimeout(timer);
    if (this.state.word !== "saved") return { kind: "unreached" };
    const answer = await this.parts.door.handIn(this.state.sitting.lastSeq, false);
    if (answer.kind === "done") this.set({ word: "handed-in", canWrite: false });
    else if (answer.kind === "refused") this.stop(answer.refusal);
    return answer;
  };

  /**
   * Ends the sitting because its time ran out: records nothing more, sends what waits, and hands in, asking again for
   * as long as no answer comes. `isOver` is asked once the server was heard: where it gave more time meanwhile, the
   * bench goes on. True when it is handed in.
   */
  readonly endOnTime = async (isOver: () => boolean): Promise<boolean> => {
    const { door } = this.parts;
    if (!this.state.canWrite) return false;
    this.isEnding = true;
    this.set({ canWrite: false });
    const claim = await door.claim(false);
    if (claim.kind === "done" && !isOver()) return this.goOn();
    this.backoff.cutShort();
    await this.pump();
    while (this.isEnding && !this.isDisposed) {
      const answer = await door.handIn(this.state.sitting.lastSeq, true);
      if (answer.kind === "done") {
        this.isEnding = false;
        this.set({ word: "handed-in" });
        return true;
      }
      if (answer.kind === "refused" && answer.refusal.code === "conflict") return this.goOn();
      if (answer.kind === "refused" && !PASSING.includes(answer.refusal.code)) this.stop(answer.refusal);
      else await this.backoff.wait();
    }
    return false;
  };

  readonly dispose = (): void => {
    this.isDisposed = true;
    this.backoff.cutShort();
  };

  /** The time is not over after all. */
  private goOn(): false {
    this.isEnding = false;
    this.set({ canWrite: true });
    void this.pump();
    return false;
  }

  private set(part: Partial<SaveState>): void {
    this.state = { ...this.state, ...part, unsavedCount: this.queue.length };
    for (const listener of this.listeners) listener();
  }

  private getBusyWord(): "offline" | "saving" | "saved" {
    if (!this.isClaimed) return "offline";
    return this.queue.length > 0 ? "saving" : "saved";
  }

  /** Kept events that the page's own `lastSeq` covers: false when another writer has taken their places. */
  private async settleOld(old: readonly SittingEvent[]): Promise<boolean> {
    const last = old.at(-1);
    if (last === undefined) return true;
    const answer = await this.parts.door.save(old);
    if (answer.kind === "done") await this.store.removeUpTo(last.seq);
    return answer.kind !== "refused";
  }

  /** Nothing more is recorded here; what was not saved is stranded. */
  private stop(refusal: Refusal): void {
    const stranded = this.queue;
    this.queue = [];
    this.isClaimed = false;
    this.isEnding = false;
    this.set({ word: findRefusalWord(refusal.code), refusal, canWrite: false, stranded });
    this.backoff.cutShort();
  }

  private pump(): Promise<void> {
    this.pumping ??= this.sendAll().finally(() => {
      this.pumping = null;
    });
    return this.pumping;
  }

  private async sendAll(): Promise<void> {
    const isLive = () => (this.state.canWrite || this.isEnding) && !this.isDisposed;
    while ((this.queue.length > 0 || !this.isClaimed) && isLive()) {
      const answer = await this.sendBatch();
      if (!isLive()) return;
      if (answer.kind === "done") await this.settle(answer.value.upToSeq);
      else if (answer.kind === "unreached") {
        this.set({ word: "offline" });
        await this.backoff.wait();
      } else if (PASSING.includes(answer.refusal.code)) {
        this.set({ word: "unsaved", refusal: answer.refusal });
        await this.backoff.wait();
      } else this.stop(answer.refusal);
    }
  }

  private async settle(upToSeq: number): Promise<void> {
    this.backoff.reset();
    this.queue = this.queue.filter(({ seq }) => seq > upToSeq);
    await this.store.removeUpTo(upToSeq);
    this.set({ word: this.getBusyWord(), refusal: null });
  }

  /** Up to which `seq` the server has what was sent. Its own `lastSeq` may be beyond: another writer's. */
  private async sendBatch(): Promise<DoorAnswer<{ upToSeq: number }>> {
    const { door, base, onStale } = this.parts;
    if (!this.isClaimed) {
      const claim = await door.claim(false);
      if (claim.kind !== "done") return claim;
      this.isClaimed = true;
      if (claim.value.lastSeq > base.lastSeq) onStale();
      if (this.queue.length === 0) return { kind: "done", value: { upToSeq: 0 } };
    }
    const batch = this.queue.slice(0, BATCH);
    const answer = await door.save(batch);
    if (answer.kind !== "done") return answer;
    return { kind: "done", value: { upToSeq: Math.min(answer.value.lastSeq, batch.at(-1)?.seq ?? 0) } };
  }
}
