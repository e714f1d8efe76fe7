/** What a bench hears from staff: once each, by either way, and seen only on a page that is looked at. */
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { ASK_MS, BEAT_MS, NoteLine } from "@/components/bench/note-line";
import { FakeSource, getLatestSource } from "@/tests/unit/watch/fake-source";

const note = (noteId: string) => ({ noteId, text: `Note ${noteId}`, sentAt: "2026-11-25T10:00:00.000Z" });

let line: NoteLine;
let said: string[];
let seen: string[];
let isVisible: boolean;
let canKeep: boolean;
let answer: unknown;
beforeEach(() => {
  vi.useFakeTimers();
  FakeSource.opened.length = 0;
  said = [];
  seen = [];
  isVisible = true;
  canKeep = true;
  answer = { notes: [] };
  line = new NoteLine({
    openSource: () => new FakeSource(),
    say: async (presence) => {
      said.push(presence);
      return answer;
    },
    saySeen: async (noteId) => {
      if (canKeep) seen.push(noteId);
      return canKeep;
    },
    isVisible: () => isVisible,
  });
  line.start();
});
afterEach(() => {
  line.stop();
  vi.useRealTimers();
});

const shown = () => line.getNotes().map(({ noteId }) => noteId);
const hear = async (...ids: string[]) => {
  getLatestSource().say("notes", { notes: ids.map(note) });
  await vi.advanceTimersByTimeAsync(1);
};

it("shows a note once, however often it is told of, and says that it is seen", async () => {
  await hear("a");
  await hear("a", "b");
  expect(shown()).toEqual(["a", "b"]);
  expect(seen).toEqual(["a", "b"]);
  line.dismiss("a");
  await hear("a", "b");
  expect(shown()).toEqual(["b"]);
});

it("does not call a note seen on a page that is hidden, until it is shown", async () => {
  isVisible = false;
  await hear("a");
  expect(shown()).toEqual(["a"]);
  expect(seen).toEqual([]);
  isVisible = true;
  line.heedVisibility();
  await vi.advanceTimersByTimeAsync(1);
  expect(seen).toEqual(["a"]);
  expect(said.at(-1)).toBe("here");
});

it("says again that a note is seen when that was not kept", async () => {
  canKeep = false;
  await hear("a");
  expect(seen).toEqual([]);
  canKeep = true;
  line.heedVisibility();
  await vi.advanceTimersByTimeAsync(1);
  expect(seen).toEqual(["a"]);
});

it("beats seldom while its stream comes through, and hears by its beats while it does not", async () => {
  await hear();
  const live = said.length;
  await vi.advanceTimersByTimeAsync(BEAT_MS - 2);
  getLatestSource().say("beat");
  expect(said.length - live).toBeLessThanOrEqual(1);
  getLatestSource().fail(2);
  answer = { notes: [note("late")] };
  await vi.advanceTimersByTimeAsync(ASK_MS + 1);
  expect(shown()).toEqual(["late"]);
});

it("says when it is left, and nothing after that", async () => {
  line.leave();
  line.stop();
  const count = said.length;
  expect(said.at(-1)).toBe("gone");
  await vi.advanceTimersByTimeAsync(BEAT_MS * 3);
  expect(said).toHaveLength(count);
});

it("takes nothing that holds more than it should", async () => {
  getLatestSource().say("notes", { notes: [{ ...note("a"), isWatched: true }] });
  await vi.advanceTimersByTimeAsync(1);
  expect(shown()).toEqual([]);
});
