import { describe, expect, it, vi } from "vitest";
import type { SaveClient } from "@/components/bench/save-client";
import {
  createClient,
  dot,
  FakeServer,
  FakeStore,
  settle,
  standClocksStill,
} from "@/tests/support/bench/fake-server";

standClocksStill();

describe("the end", () => {
  it("hands in only when everything is saved", async () => {
    const [server, store] = [new FakeServer(), new FakeStore()];
    const client = createClient(server, store);
    await client.open();
    client.record(dot("m1"));
    const answer = await client.handIn();
    expect(answer).toEqual({ kind: "done", value: { handedInAt: "2026-11-25T10:00:00.000Z" } });
    expect(server.log).toHaveLength(1);
    expect(client.getState()).toMatchObject({ word: "handed-in", canWrite: false });
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
    expect(client.getState().word).toBe("handed-in");
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
