import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { BenchDoor, DoorAnswer } from "@/components/bench/bench-door";
import type { EventStore } from "@/components/bench/event-store";
import { type EventBody, SaveClient } from "@/components/bench/save-client";
import { rebuildSitting, type SittingEvent } from "@/lib/plot/sitting-event";

const dot = (id: string): EventBody => ({
  kind: "marks",
  put: [{ id, view: "crown", characteristic: "crystal", shape: { kind: "dot", at: [0.1, 0.1] } }],
  removed: [],
});

/** A server that holds a log and obeys the contract: idempotent, one writer, no gaps. */
class FakeServer {
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
class FakeStore implements EventStore {
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
const stale = vi.fn();

function createClient(server: FakeServer, store: FakeStore, writerId = "tab-a") {
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

const settle = () => vi.advanceTimersByTimeAsync(0);
const markIds = (client: SaveClient) => client.getState().sitting.plot.marks.map(({ id }) => id);

beforeEach(() => {
  vi.useFakeTimers();
  clockMs = 0;
  stale.mockClear();
});
afterEach(() => {
  vi.useRealTimers();
});

describe("saving", () => {
  it("calls a change saved only once the server has it, and then forgets its own copy", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const client = createClient(server, store);
    await client.open();
    expect(client.getState().word).toBe("saved");
    const words: string[] = [];
    client.subscribe(() => words.push(`${client.getState().word} ${server.log.length}`));
    client.record(dot("m1"));
    expect(client.getState().word).toBe("saving");
    await settle();
    expect(client.getState()).toMatchObject({ word: "saved", unsavedCount: 0 });
    expect(server.log.map(({ seq }) => seq)).toEqual([1]);
    expect(store.rows.size).toBe(0);
    expect(words.filter((word) => word.startsWith("saved"))).not.toContain("saved 0");
  });

  it("sends what was recorded during a request together, in order, with the next one", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const client = createClient(server, store);
    await client.open();
    for (let i = 0; i < 40; i += 1) client.record(dot(`m${i}`));
    await settle();
    expect(server.log.map(({ seq }) => seq)).toEqual(Array.from({ length: 40 }, (_, i) => i + 1));
    expect(server.saves).toBeLessThanOrEqual(2);
    expect(rebuildSitting(server.log)).toEqual(client.getState().sitting);
  });

  it("goes on offline, says so, and saves everything once when the server is back", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const client = createClient(server, store);
    await client.open();
    server.isDown = true;
    client.record(dot("m1"));
    await settle();
    client.record(dot("m2"));
    await vi.advanceTimersByTimeAsync(60_000);
    expect(client.getState()).toMatchObject({ word: "offline", unsavedCount: 2, canWrite: true });
    expect([...store.rows.keys()]).toEqual([1, 2]);
    server.isDown = false;
    client.retryNow();
    await settle();
    expect(client.getState()).toMatchObject({ word: "saved", unsavedCount: 0 });
    expect(server.log).toHaveLength(2);
  });

  it("saves nothing twice when the answer to a save is lost", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const client = createClient(server, store);
    await client.open();
    server.dropsAnswers = true;
    client.record(dot("m1"));
    await settle();
    expect(client.getState().word).toBe("offline");
    client.record(dot("m2"));
    server.dropsAnswers = false;
    await vi.advanceTimersByTimeAsync(20_000);
    expect(server.log.map(({ seq }) => seq)).toEqual([1, 2]);
    expect(client.getState().word).toBe("saved");
  });

  it("says when the browser keeps nothing, and still saves", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    store.isBroken = true;
    const client = createClient(server, store);
    await client.open();
    client.record(dot("m1"));
    await settle();
    expect(client.getState()).toMatchObject({ word: "saved", canKeep: false });
  });

  it("records nothing before the sitting is claimed", () => {
    const client = createClient(new FakeServer(), new FakeStore());
    expect(client.record(dot("m1"))).toBe(false);
    expect(markIds(client)).toEqual([]);
  });
});

describe("coming back", () => {
  it("brings back what was not saved before a reload and saves it", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const before = createClient(server, store);
    await before.open();
    before.record(dot("m1"));
    await settle();
    server.isDown = true;
    before.record(dot("m2"));
    await settle();
    before.dispose();
    server.isDown = false;

    const after = createClient(server, store);
    await after.open();
    expect(markIds(after)).toEqual(["m1", "m2"]);
    await settle();
    expect(after.getState().word).toBe("saved");
    expect(server.log.map(({ seq }) => seq)).toEqual([1, 2]);
    expect(store.rows.size).toBe(0);
  });

  it("takes what the server already has for saved when only the answer was lost", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const before = createClient(server, store);
    await before.open();
    server.dropsAnswers = true;
    before.record(dot("m1"));
    await settle();
    before.dispose();
    server.dropsAnswers = false;

    const after = createClient(server, store);
    await after.open();
    await settle();
    expect(after.getState()).toMatchObject({ word: "saved", mustDecide: false });
    expect(server.log).toHaveLength(1);
    expect(store.rows.size).toBe(0);
  });

  it("claims as soon as the server can be reached, though nothing waits to be saved", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const client = createClient(server, store);
    server.isDown = true;
    await client.open();
    expect(client.getState()).toMatchObject({ word: "offline", canWrite: true });
    server.isDown = false;
    await vi.advanceTimersByTimeAsync(1000);
    expect(client.getState().word).toBe("saved");
    expect(server.writer).toBe("tab-a");
  });
});

describe("one writer", () => {
  it("only looks on while another writes, and takes over when told to", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const first = createClient(server, store, "tab-a");
    await first.open();
    first.record(dot("m1"));
    await settle();

    const second = createClient(server, new FakeStore(), "tab-b");
    await second.open();
    expect(second.getState()).toMatchObject({ word: "elsewhere", canWrite: false });
    expect(second.record(dot("x"))).toBe(false);
    await second.open(true);
    expect(second.getState()).toMatchObject({ word: "saved", canWrite: true });

    await first.check();
    expect(first.getState()).toMatchObject({ word: "elsewhere", canWrite: false, stranded: [] });
    expect(server.log).toHaveLength(1);
  });

  it("asks for a fresh page when the sitting has moved on", async () => {
    const server = new FakeServer();
    const late = createClient(server, new FakeStore(), "tab-b");
    const first = createClient(server, new FakeStore(), "tab-a");
    await first.open();
    first.record(dot("m1"));
    await settle();
    await late.open(true);
    expect(stale).toHaveBeenCalledTimes(1);
    expect(late.getState().canWrite).toBe(false);
  });

  it("strands what another device has overtaken, and adds it on top when told to", async () => {
    const server = new FakeServer();
    const storeA = new FakeStore();
    const first = createClient(server, storeA, "laptop");
    await first.open();
    server.isDown = true;
    first.record(dot("mine"));
    await settle();
    server.isDown = false;
    const other = createClient(server, new FakeStore(), "tablet");
    await other.open(true);
    other.record(dot("theirs"));
    await settle();
    first.retryNow();
    await settle();
    expect(first.getState()).toMatchObject({ word: "elsewhere", canWrite: false });
    expect(first.getState().stranded).toHaveLength(1);
    first.dispose();

    const again = createClient(server, storeA, "laptop");
    await again.open(true);
    expect(again.getState()).toMatchObject({ mustDecide: true, canWrite: false });
    await again.addStranded();
    await settle();
    expect(markIds(again)).toEqual(["theirs", "mine"]);
    expect(again.getState()).toMatchObject({ word: "saved", stranded: [], mustDecide: false });
    expect(rebuildSitting(server.log).plot.marks.map(({ id }) => id)).toEqual(["theirs", "mine"]);
  });

  it("does not take another writer's steps for an acknowledgement of its own", async () => {
    const server = new FakeServer();
    const first = createClient(server, new FakeStore(), "laptop");
    await first.open();
    server.dropsAnswers = true;
    for (let i = 1; i <= 150; i += 1) first.record(dot(`m${i}`));
    await vi.advanceTimersByTimeAsync(600);
    server.dropsAnswers = false;
    const saved = server.log.length;
    expect(saved).toBe(100);
    const other = createClient(server, new FakeStore(), "tablet");
    await other.open(true);
    for (let i = 1; i <= 20; i += 1) other.record(dot(`theirs${i}`));
    await settle();
    await vi.advanceTimersByTimeAsync(20_000);
    expect(first.getState().word).toBe("elsewhere");
    expect(first.getState().stranded.map(({ seq }) => seq)).toEqual(
      Array.from({ length: 150 - saved }, (_, i) => saved + 1 + i),
    );
  });

  it("leaves stranded changes out for good when told to", async () => {
    const server = new FakeServer();
    const store = new FakeStore();
    await store.put([{ kind: "grade", property: "clarity", grade: "VS1", seq: 1, atMs: 5 }]);
    const other = createClient(server, new FakeStore(), "tablet");
    await other.open();
    other.record(dot("theirs"));
    await settle();
    const again = createClient(server, store, "laptop");
    await again.open(true);
    expect(again.getState().mustDecide).toBe(true);
    await again.dropStranded();
    expect(again.getState()).toMatchObject({ word: "saved", canWrite: true, stranded: [] });
    again.record(dot("m2"));
    await settle();
    expect(server.log.map((event) => event.kind)).toEqual(["marks", "marks"]);
    expect(store.rows.size).toBe(0);
  });

  it("turns read-only at once when another tab says that it writes", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const client = createClient(server, store);
    await client.open();
    client.yieldToOther();
    expect(client.getState()).toMatchObject({ word: "elsewhere", canWrite: false });
  });
});

describe("the end", () => {
  it("hands in only when everything is saved", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const client = createClient(server, store);
    await client.open();
    client.record(dot("m1"));
    const answer = await client.handIn();
    expect(answer).toEqual({ kind: "done", value: { handedInAt: "2026-11-25T10:00:00.000Z" } });
    expect(server.log).toHaveLength(1);
    expect(client.getState()).toMatchObject({ word: "closed", canWrite: false });
  });

  it("says closed, and keeps count of what came too late", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const client = createClient(server, store);
    await client.open();
    server.isClosed = true;
    client.record(dot("m1"));
    await settle();
    expect(client.getState()).toMatchObject({ word: "closed", canWrite: false });
    expect(client.getState().stranded).toHaveLength(1);
  });
});

/** A bench with two marks drawn, the server as it is. */
async function openWithMarks(server: FakeServer): Promise<SaveClient> {
  const client = createClient(server, new FakeStore());
  await client.open();
  await settle();
  client.record(dot("a"));
  client.record(dot("b"));
  await settle();
  return client;
}

describe("a server without room", () => {
  it("is said to have saved nothing, is asked again, and loses nothing", async () => {
    const server = new FakeServer();
    server.isFull = true;
    const client = await openWithMarks(server);
    expect(client.getState()).toMatchObject({ word: "unsaved", unsavedCount: 2, canWrite: true });
    expect(client.getState().refusal?.code).toBe("no-room");
    client.record(dot("c"));
    server.isFull = false;
    await vi.advanceTimersByTimeAsync(20_000);
    expect(client.getState()).toMatchObject({ word: "saved", unsavedCount: 0, refusal: null });
    expect(server.log.map(({ seq }) => seq)).toEqual([1, 2, 3]);
  });
});

describe("handing in without a network", () => {
  it("is given up after a while and never made up for by itself", async () => {
    const server = new FakeServer();
    const client = await openWithMarks(server);
    server.isDown = true;
    client.record(dot("c"));
    await settle();
    const handingIn = client.handIn();
    await vi.advanceTimersByTimeAsync(10_000);
    expect(await handingIn).toEqual({ kind: "unreached" });
    server.isDown = false;
    await vi.advanceTimersByTimeAsync(60_000);
    expect(server.log).toHaveLength(3);
    expect(server.handIns).toBe(0);
    expect((await client.handIn()).kind).toBe("done");
    expect(server.handIns).toBe(1);
  });

  it("goes through where the network comes back in time", async () => {
    const server = new FakeServer();
    const client = await openWithMarks(server);
    server.isDown = true;
    client.record(dot("c"));
    await settle();
    const handingIn = client.handIn();
    await vi.advanceTimersByTimeAsync(1000);
    server.isDown = false;
    await vi.advanceTimersByTimeAsync(5000);
    expect((await handingIn).kind).toBe("done");
    expect(server.log).toHaveLength(3);
  });
});

describe("the end of the time", () => {
  it("sends what waits and hands in, though the server is away for a while", async () => {
    const server = new FakeServer();
    const client = await openWithMarks(server);
    server.isDown = true;
    client.record(dot("c"));
    const ending = client.endOnTime(() => true);
    await vi.advanceTimersByTimeAsync(20_000);
    expect(client.getState().canWrite).toBe(false);
    expect(client.record(dot("d"))).toBe(false);
    server.isDown = false;
    await vi.advanceTimersByTimeAsync(40_000);
    expect(await ending).toBe(true);
    expect(client.getState().word).toBe("closed");
    expect([server.log.length, server.handIns]).toEqual([3, 1]);
  });

  it("lets the bench go on where the server has given more time", async () => {
    const server = new FakeServer();
    const client = await openWithMarks(server);
    expect(await client.endOnTime(() => false)).toBe(false);
    expect(client.getState().canWrite).toBe(true);
    server.handInRefusal = "conflict";
    expect(await client.endOnTime(() => true)).toBe(false);
    expect(client.record(dot("c"))).toBe(true);
    await settle();
    expect([server.log.length, server.handIns]).toEqual([3, 0]);
  });

  it("stops where the server has handed in already", async () => {
    const server = new FakeServer();
    const client = await openWithMarks(server);
    server.handInRefusal = "closed";
    expect(await client.endOnTime(() => true)).toBe(false);
    expect(client.getState()).toMatchObject({ word: "closed", canWrite: false });
  });
});
