/** What holds for one student: dates, attempts, order and names of stones, and which stone is like another. */
import { describe, expect, it } from "vitest";
import { arrangeOwnPlaces } from "@/lib/plot/arrange-own-places";
import { type AttemptGround, countAttemptsLeft } from "@/lib/plot/count-attempts";
import { rankRetakeStones } from "@/lib/plot/rank-retake-stones";
import { toOwnDates } from "@/lib/plot/to-own-dates";

const at = (hour: number) => new Date(Date.UTC(2026, 10, 20, hour));

describe("dates", () => {
  const exercise = { opensAt: at(1), dueAt: at(5), closesAt: at(7) };
  it.each([
    ["no allowance", undefined, 5, 7],
    ["due later", { dueAt: at(6), closesAt: null }, 6, 7],
    ["due after it closes: it closes no sooner", { dueAt: at(9), closesAt: null }, 9, 9],
    ["closes later", { dueAt: null, closesAt: at(9) }, 5, 9],

    ["earlier than everybody's gives nothing", { dueAt: at(2), closesAt: at(3) }, 5, 7],
  ])("%s", (_what, allowance, due, closes) => {
    expect(toOwnDates(exercise, allowance)).toEqual({ opensAt: at(1), dueAt: at(due), closesAt: at(closes) });
  });

  it("never close where the exercise never does", () => {
    const open = { ...exercise, closesAt: null };
    expect(toOwnDates(open, { dueAt: at(9), closesAt: at(8) }).closesAt).toBeNull();
  });
});

describe("attempts", () => {
  const ground = (part: Partial<AttemptGround>): AttemptGround => ({
    attempts: 1,
    extraAttempts: 0,
    isRetake: false,
    grantedAt: [],
    begun: [],
    ...part,
  });
  const begun = (hour: number, isHandedIn = true, isReleased = false) => ({
    openedAt: at(hour),
    isHandedIn,
    isReleased,
  });
  it.each([
    ["the first", ground({}), 1],
    ["none while one is on the bench", ground({ attempts: 3, begun: [begun(1, false)] }), 0],
    ["none after the only one", ground({ begun: [begun(1)] }), 0],
    ["what the rules leave", ground({ attempts: 3, begun: [begun(1)] }), 2],
    ["what was allowed beyond them", ground({ extraAttempts: 1, begun: [begun(1)] }), 1],
    [
      "none once the debrief was released",
      ground({ attempts: 3, extraAttempts: 2, begun: [begun(1, true, true)] }),
      0,
    ],
    ["one by a retake granted since", ground({ grantedAt: [at(2)], begun: [begun(1, true, true)] }), 1],
    [
      "none by a retake that was used",
      ground({ grantedAt: [at(2)], begun: [begun(1, true, true), begun(3)] }),
      0,
    ],
    ["none on a stone for retakes that was not granted", ground({ isRetake: true, attempts: 3 }), 0],
    ["one on a stone for retakes that was", ground({ isRetake: true, grantedAt: [at(1)] }), 1],
  ])("%s", (_what, given, left) => {
    expect(countAttemptsLeft(given)).toBe(left);
  });
});

describe("stones as a student meets them", () => {
  const places = Array.from({ length: 8 }, (_, index) => ({
    id: `place-${index}`,
    position: index + 1,
    isRetake: index === 2,
    opensAt: null,
    stone: { label: `T-${index + 1}` },
  }));

  it("stand by their place under their labels, retakes last", () => {
    const labels = arrangeOwnPlaces(places, false, "ada").map(({ label }) => label);
    expect(labels).toEqual(["T-1", "T-2", "T-4", "T-5", "T-6", "T-7", "T-8", "T-3"]);
  });

  it("are numbered in an order of the student's own where labels are hidden, each time the same", () => {
    const orderOf = (student: string) =>
      arrangeOwnPlaces([...places].reverse(), true, student).map(({ place }) => place.id);
    const names = arrangeOwnPlaces(places, true, "ada").map(({ label }) => label);
    expect(names).toEqual(places.map((_, index) => `Stone ${index + 1}`));
    expect(orderOf("ada")).toEqual(arrangeOwnPlaces(places, true, "ada").map(({ place }) => place.id));
    const orders = new Set(["ada", "ben", "cyd", "dan", "eve"].map((who) => orderOf(who).join()));
    expect(orders.size).toBe(5);
    expect(orderOf("ben").at(-1)).toBe("place-2");
  });
});

describe("stones of like difficulty", () => {
  const stone = (label: string, difficulty: number | null, marks: number | null) => ({
    stoneId: label,
    label,
    trayName: "Tray",
    difficulty,
    marks,
  });
  it("those that plots tell of first, then by the number of marks; none without a reference", () => {
    const ranked = rankRetakeStones(stone("T-1", 0.2, 5), [
      stone("T-1", 0.2, 5),
      stone("far", 2, 5),
      stone("near", -0.1, 9),
      stone("unknown", null, 6),
      stone("unknown too", null, 12),
      stone("bare", null, null),
    ]);
    expect(ranked.map(({ label }) => label)).toEqual(["near", "far", "unknown", "unknown too"]);
    expect(ranked[0]?.because).toContain("−0.1");
    expect(ranked[2]?.because).toContain("has 6 marks, that of T-1 has 5");
  });
});
