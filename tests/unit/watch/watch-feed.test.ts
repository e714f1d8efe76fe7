/** By which way the watch hears of the class: the stream while it comes through, questions while it does not. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { PATIENCE_MS, REST_MS, SILENCE_MS } from "@/components/live/live-stream";
import { ASK_MS, type WatchAnswer, WatchFeed } from "@/components/watch/watch-feed";
import type { Watch } from "@/lib/plot/watch-view";
import { FakeSource, getLatestSource } from "@/tests/unit/watch/fake-source";
import { makeWatchRow } from "@/tests/unit/watch/make-watch-row";

const whole = (...ids: string[]): Watch => ({
  readAt: new Date().toISOString(),
  rows: ids.map((sittingId) => makeWatchRow({ sittingId })),
});

let feed: WatchFeed;
let answer: WatchAnswer;
let asked: number;
beforeEach(() => {
  vi.useFakeTimers();
  FakeSource.opened.length = 0;
  asked = 0;
  answer = { kind: "unreached" };
  feed = new WatchFeed({
    first: whole("first"),
    openSource: () => new FakeSource(),
    ask: async () => {
      asked += 1;
      return answer;
    },
    nowMs: () => Date.now(),
  });
  feed.start();
});
afterEach(() => {
  feed.stop();
  vi.useRealTimers();
});

const ids = () => [...feed.getState().rows.keys()];

describe("while the stream comes through", () => {
  it("shows everything, then each change, and asks nothing", async () => {
    expect(ids()).toEqual(["first"]);
    getLatestSource().say("whole", whole("a", "b"));
    expect(feed.getState().mode).toBe("stream");
    getLatestSource().say("change", {
      readAt: new Date().toISOString(),
      put: [makeWatchRow({ sittingId: "a", markCount: 9 }), makeWatchRow({ sittingId: "c" })],
      removed: ["b"],
    });
    expect(ids()).toEqual(["a", "c"]);
    expect(feed.getState().rows.get("a")?.markCount).toBe(9);
    for (let beats = 0; beats < 10; beats += 1) {
      await vi.advanceTimersByTimeAsync(5000);
      getLatestSource().say("beat");
    }
    expect(asked).toBe(0);
    expect(FakeSource.opened).toHaveLength(1);
  });

  it("takes the whole for the whole: what it does not name is gone", () => {
    getLatestSource().say("whole", whole("a", "b"));
    getLatestSource().say("whole", whole("b"));
    expect(ids()).toEqual(["b"]);
  });
});

describe("while it does not", () => {
  it("asks by itself when nothing comes at first, as behind something that gathers the stream up", async () => {
    answer = { kind: "whole", watch: whole("polled") };
    await vi.advanceTimersByTimeAsync(PATIENCE_MS + 100);
    expect(feed.getState().mode).toBe("asking");
    expect(ids()).toEqual(["polled"]);
    answer = { kind: "whole", watch: whole("later") };
    await vi.advanceTimersByTimeAsync(ASK_MS);
    expect(ids()).toEqual(["later"]);
    expect(getLatestSource().readyState).toBe(2);
  });

  it("asks after a silence, and goes back to the stream once it speaks again", async () => {
    getLatestSource().say("whole", whole("a"));
    answer = { kind: "whole", watch: whole("polled") };
    await vi.advanceTimersByTimeAsync(SILENCE_MS + 100);
    expect(feed.getState().mode).toBe("asking");
    await vi.advanceTimersByTimeAsync(REST_MS);
    expect(FakeSource.opened).toHaveLength(2);
    getLatestSource().say("whole", whole("b"));
    expect(feed.getState().mode).toBe("stream");
    const before = asked;
    await vi.advanceTimersByTimeAsync(ASK_MS * 2);
    expect(asked).toBe(before);
    expect(ids()).toEqual(["b"]);
  });

  it("asks at once after an error, whether the browser tries again by itself or not", async () => {
    for (const readyState of [0, 2] as const) {
      getLatestSource().say("whole", whole("a"));
      answer = { kind: "whole", watch: whole("polled") };
      getLatestSource().fail(readyState);
      await vi.advanceTimersByTimeAsync(50);
      expect(feed.getState().mode).toBe("asking");
      expect(ids()).toEqual(["polled"]);
      await vi.advanceTimersByTimeAsync(SILENCE_MS + REST_MS);
    }
    expect(FakeSource.opened.length).toBeGreaterThan(1);
  });

  it("takes no answer that was asked for before the stream spoke again", async () => {
    let give: (answer: WatchAnswer) => void = () => {};
    feed.stop();
    const late = new WatchFeed({
      first: whole("first"),
      openSource: () => new FakeSource(),
      ask: () =>
        new Promise((resolve) => {
          give = resolve;
        }),
      nowMs: () => Date.now(),
    });
    late.start();
    getLatestSource().say("whole", whole("a"));
    getLatestSource().fail(0);
    await vi.advanceTimersByTimeAsync(10);
    getLatestSource().say("whole", whole("newer"));
    give({ kind: "whole", watch: whole("older") });
    await vi.advanceTimersByTimeAsync(10);
    expect([...late.getState().rows.keys()]).toEqual(["newer"]);
    expect(late.getState().mode).toBe("stream");
    late.stop();
  });

  it("says that it is lost while the server is not reached, keeps what it has, and comes back", async () => {
    getLatestSource().say("whole", whole("a"));
    getLatestSource().fail(0);
    await vi.advanceTimersByTimeAsync(50);
    expect(feed.getState().mode).toBe("lost");
    expect(ids()).toEqual(["a"]);
    answer = { kind: "whole", watch: whole("a", "b") };
    await vi.advanceTimersByTimeAsync(ASK_MS + 50);
    expect(feed.getState().mode).toBe("asking");
    expect(ids()).toEqual(["a", "b"]);
  });

  it.each([
    ["the stream says so", () => getLatestSource().say("signed-out")],
    [
      "a question is refused",
      () => {
        answer = { kind: "refused" };
        getLatestSource().fail(2);
      },
    ],
  ])("ends for good when %s", async (_what, happen) => {
    getLatestSource().say("whole", whole("a"));
    happen();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(feed.getState().mode).toBe("ended");
    expect(FakeSource.opened).toHaveLength(1);
    expect(asked).toBeLessThanOrEqual(1);
    expect(ids()).toEqual(["a"]);
  });
});

it("knows what the server's clock is ahead by", () => {
  const readAt = new Date(Date.now() + 90_000).toISOString();
  getLatestSource().say("whole", { readAt, rows: [] });
  expect(feed.getState().aheadMs).toBe(90_000);
});
