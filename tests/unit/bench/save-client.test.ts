import { describe, expect, it, vi } from "vitest";
import { rebuildSitting } from "@/lib/plot/sitting-event";
import {
  createClient,
  dot,
  FakeServer,
  FakeStore,
  markIds,
  settle,
  standClocksStill,
} from "@/tests/support/bench/fake-server";

standClocksStill();

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
