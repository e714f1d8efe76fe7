import { describe, expect, it, vi } from "vitest";
import { rebuildSitting } from "@/lib/plot/sitting-event";
import {
  createClient,
  dot,
  FakeServer,
  FakeStore,
  markIds,
  settle,
  stale,
  standClocksStill,
} from "@/tests/support/bench/fake-server";

standClocksStill();

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
