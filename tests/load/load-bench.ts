/** One student's bench for the load script: draws at a student's pace, sends at once in order, one request at a time. */
import { setTimeout as wait } from "node:timers/promises";
import { createSeededRandom, type SeededRandom } from "@/lib/base/seeded-random";
import type { SittingEvent } from "@/lib/plot/sitting-event";
import type { WebClient } from "@/tests/load/web-client";

/** Between two marks, ms; and between the dots of a burst. */
const PACE_MS = [2000, 4000] as const;
const DOT_MS = [250, 400] as const;
const BURST_DOTS = 7;
/** So many of the pauses end in a burst. */
const BURST_CHANCE = 0.02;
const BEAT_MS = 20_000;
/** Confirmed marks stay; the oldest are drawn anew, so that a plot keeps to the size of a real one. */
const MOST_MARKS = 40;

/** A batch that was sent: the moments are of `performance.now`, ms. */
export interface SentBatch {
  readonly sittingId: string;
  readonly lastSeq: number;
  /** The batch completes a burst. */
  readonly isBurst: boolean;
  readonly sentMs: number;
  ackMs: number | null;
}

export class LoadBench {
  acknowledged = 0;
  errors = 0;
  events = 0;
  private seq = 0;
  private queue: SittingEvent[] = [];
  private burstSeq: number | null = null;
  private sending: Promise<void> | null = null;
  private readonly random: SeededRandom;
  private readonly openedMs = performance.now();
  private readonly path: string;
  private stopStream: () => void = () => {};

  constructor(
    private readonly client: WebClient,
    readonly sittingId: string,
    private readonly onSent: (batch: SentBatch) => void,
  ) {
    this.random = createSeededRandom(`load/${sittingId}`);
    this.path = `/api/sittings/${sittingId}`;
  }

  private draw([low, high]: readonly [number, number]): number {
    return low + (high - low) * this.random.next();
  }

  /** Opens the bench as the page does: claims it, listens for notes, says that it is there. */
  async open(): Promise<void> {
    const claim = await this.client.post(`${this.path}/claim`, { writerId: this.writerId, takeOver: false });
    if (claim.status !== 200) throw new Error(`claim answered ${claim.status}: ${claim.text}`);
    this.stopStream = await this.client.listen(
      `${this.path}/notes/stream`,
      () => {},
      () => {},
    );
    // A browser has a few connections by the time its page is there, and keeps them.
    await Promise.all([
      this.client.get(`/bench/${this.sittingId}`),
      this.client.post(`${this.path}/presence`, { presence: "here" }),
    ]);
  }

  close(): void {
    this.stopStream();
    this.client.close();
  }

  private get writerId(): string {
    return `load-writer-${this.sittingId}`;
  }

  private putMark(): void {
    this.seq += 1;
    const atMs = Math.round(performance.now() - this.openedMs);
    const [radius, angle] = [0.45 * Math.sqrt(this.random.next()), 2 * Math.PI * this.random.next()];
    const round = (value: number) => Math.round(value * 1e4) / 1e4;
    const at: [number, number] = [round(radius * Math.cos(angle)), round(radius * Math.sin(angle))];
    const mark = {
      id: `m${this.seq % MOST_MARKS}`,
      view: "crown" as const,
      characteristic: "crystal",
      shape: { kind: "dot" as const, at },
      atMs,
    };
    this.queue.push({ seq: this.seq, atMs, kind: "marks", put: [mark], removed: [] });
    this.events += 1;
    this.sending ??= this.sendAll().finally(() => {
      this.sending = null;
    });
  }

  private async sendAll(): Promise<void> {
    while (this.queue.length > 0) {
      const events = this.queue;
      this.queue = [];
      const lastSeq = events.at(-1)?.seq ?? 0;
      const isBurst = this.burstSeq !== null && lastSeq >= this.burstSeq;
      if (isBurst) this.burstSeq = null;
      const batch: SentBatch = {
        sittingId: this.sittingId,
        lastSeq,
        isBurst,
        sentMs: performance.now(),
        ackMs: null,
      };
      this.onSent(batch);
      const answer = await this.client.post(`${this.path}/events`, { writerId: this.writerId, events });
      batch.ackMs = performance.now();
      if (answer.status === 200) this.acknowledged = JSON.parse(answer.text).lastSeq;
      else this.errors += 1;
    }
  }

  /** Plots until the moment comes, then waits for the last answer. */
  async plotUntil(endMs: number): Promise<void> {
    let beatMs = performance.now() + BEAT_MS * this.random.next();
    await wait(this.draw([0, PACE_MS[1]]));
    while (performance.now() < endMs) {
      if (performance.now() > beatMs) {
        beatMs += BEAT_MS;
        void this.client.post(`${this.path}/presence`, { presence: "here" }).catch(() => {
          this.errors += 1;
        });
      }
      const dots = this.random.chance(BURST_CHANCE) ? BURST_DOTS : 1;
      for (let dot = 0; dot < dots; dot += 1) {
        if (dot > 0) await wait(this.draw(DOT_MS));
        // Six dots in a row are a burst by the default rule; the seventh goes on with it.
        if (dot === 5) this.burstSeq = this.seq + 1;
        this.putMark();
      }
      await wait(this.draw(PACE_MS));
    }
    await this.sending;
  }
}
