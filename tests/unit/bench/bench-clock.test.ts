import { expect, it } from "vitest";
import { createBenchClock } from "@/components/bench/bench-clock";

const OPENED = "2026-11-25T09:00:00.000Z";
const READ = "2026-11-25T09:10:00.000Z";

it("counts from the opening by the server's clock, whatever the browser's says", () => {
  let steadyMs = 5000;
  const clock = createBenchClock(OPENED, READ, () => steadyMs);
  expect(clock.sinceOpenedMs()).toBe(600_000);
  steadyMs += 1500;
  expect(clock.sinceOpenedMs()).toBe(601_500);
});

it("never runs backwards, though the server's clock is set back", () => {
  const clock = createBenchClock(OPENED, READ, () => 0);
  const before = clock.sinceOpenedMs();
  clock.heed(Date.parse(READ) - 60_000);
  expect(clock.sinceOpenedMs()).toBe(before);
});

it("goes on with the steady clock meanwhile, so that dots made apart are not timed as one burst", () => {
  let steadyMs = 0;
  const clock = createBenchClock(OPENED, READ, () => steadyMs);
  const before = clock.sinceOpenedMs();
  clock.heed(Date.parse(READ) - 3_600_000);
  const times = [2000, 4000, 6000].map((at) => {
    steadyMs = at;
    return clock.sinceOpenedMs() - before;
  });
  expect(times).toEqual([2000, 4000, 6000]);
});

it("starts where the log has come to, though the server's clock was set back before the page was read", () => {
  let steadyMs = 0;
  const clock = createBenchClock(OPENED, READ, () => steadyMs);
  clock.startFrom(900_000);
  steadyMs = 1000;
  expect(clock.sinceOpenedMs()).toBe(901_000);
  clock.startFrom(5);
  expect(clock.sinceOpenedMs()).toBe(901_000);
});

it("catches up after a sleep that stopped the browser's steady clock", () => {
  const clock = createBenchClock(OPENED, READ, () => 0);
  clock.heed(Date.parse(READ) + 3_600_000);
  expect(clock.sinceOpenedMs()).toBe(600_000 + 3_600_000);
});

it("takes the rounding of a Date header and an unreadable one for no drift", () => {
  const clock = createBenchClock(OPENED, READ, () => 0);
  clock.heed(Date.parse(READ) - 999);
  clock.heed(Number.NaN);
  expect(clock.sinceOpenedMs()).toBe(600_000);
});
