/**
 * Timed stones, by the server's clock alone: what is told before it runs, what comes in after the end, who hands in,
 * extra time, and a clock that is set. The clocks of these tests are moved by hand.
 */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Viewer } from "@/lib/access/viewer";
import { getBench } from "@/lib/data/get-bench";
import { getDebrief } from "@/lib/data/get-debrief";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { listMyExercises } from "@/lib/data/list-my-exercises";
import { listTrail } from "@/lib/data/list-trail";
import { getDatabase } from "@/lib/data/store/database";
import { GRACE_MS } from "@/lib/plot/time-limit";
import { grantExtraTime } from "@/lib/workflows/grant-extra-time";
import { handIn } from "@/lib/workflows/hand-in";
import { handInOverdue } from "@/lib/workflows/hand-in-overdue";
import { openSitting } from "@/lib/workflows/open-sitting";
import { saveEvents } from "@/lib/workflows/save-events";
import { buildSchool, type School, WRITER } from "@/tests/support/school";
import { makeMark } from "@/tests/support/school-marks";
import { standUpSchool } from "@/tests/support/stand-up-school";

const MINUTE_MS = 60_000;
const LIMIT = 20;

let school: School;
let ben: Viewer;
standUpSchool(async () => {
  school = await buildSchool();
  const rules = { preparation: "required", schoolRules: "", minutesPerStone: LIMIT };
  await getDatabase().exercise.update({ where: { id: school.exerciseId }, data: { rules } });
});
beforeEach(async () => {
  ben = school.ben;
  delete (globalThis as { loupeworkClock?: unknown }).loupeworkClock;
  vi.useFakeTimers({ toFake: ["Date", "performance"] });
  // As a server does at its start: from here on it knows when its clock is set.
  await handInOverdue();
});
afterEach(() => {
  vi.useRealTimers();
});

/** Time goes by: both the wall clock and the steady one. */
const pass = (ms: number) => vi.advanceTimersByTime(ms);
/** Somebody sets the server's clock. */
const setClock = (byMs: number) => vi.setSystemTime(Date.now() + byMs);

const open = (agreedMinutes: number | null = LIMIT) =>
  openSitting(ben, { exerciseStoneId: school.exerciseStoneIds[1], agreedMinutes });
const save = (sittingId: string, seq: number, atMs: number) =>
  saveEvents(ben, {
    sittingId,
    writerId: WRITER,
    events: [{ seq, atMs, kind: "marks", put: [makeMark(`m${seq}`, 0.01 * seq)], removed: [] }],
  });
const endOnTime = (sittingId: string, lastSeq: number) =>
  handIn(ben, { sittingId, writerId: WRITER, lastSeq, isTimeOut: true });
const readHandIn = (sittingId: string) => getDatabase().handIn.findUnique({ where: { sittingId } });

describe("opening a timed stone", () => {
  it("is refused without agreeing to just the time that there is", async () => {
    await expect(open(null)).rejects.toMatchObject({ code: "conflict" });
    await expect(open(30)).rejects.toMatchObject({ code: "conflict" });
    const [mine] = await listMyExercises(ben);
    expect(mine?.minutesPerStone).toBe(LIMIT);
    const { sittingId } = await open();
    const bench = await getBench(ben, sittingId);
    expect(Date.parse(bench.endsAt ?? "") - Date.parse(bench.openedAt)).toBe(LIMIT * MINUTE_MS);
  });

  it("ends with the exercise, if that closes first", async () => {
    const closesAt = new Date(Date.now() + 5 * MINUTE_MS);
    await getDatabase().exercise.update({ where: { id: school.exerciseId }, data: { closesAt } });
    const { sittingId } = await open();
    expect((await getBench(ben, sittingId)).endsAt).toBe(closesAt.toISOString());
    pass(5 * MINUTE_MS + 1000);
    await save(sittingId, 1, 4 * MINUTE_MS);
    await endOnTime(sittingId, 1);
    expect(await readHandIn(sittingId)).toMatchObject({ timedOut: true, lastSeq: 1 });
  });

  it("leaves stones alone that were opened before there was a limit", async () => {
    expect((await getBench(school.ada, school.adaOnBench)).endsAt).toBeNull();
    pass(10 * 60 * MINUTE_MS);
    expect(await handInOverdue()).toEqual({ handedIn: 0 });
  });
});

describe("when the time runs out", () => {
  it("keeps what was made before the end and comes within the grace, and nothing made after it", async () => {
    const { sittingId } = await open();
    pass(LIMIT * MINUTE_MS + GRACE_MS - 1);
    await expect(save(sittingId, 1, LIMIT * MINUTE_MS + 6000)).rejects.toMatchObject({ code: "closed" });
    expect(await save(sittingId, 1, LIMIT * MINUTE_MS - 1)).toMatchObject({ lastSeq: 1 });
    pass(1);
    await expect(save(sittingId, 2, LIMIT * MINUTE_MS - 1)).rejects.toMatchObject({ code: "closed" });
    expect(await save(sittingId, 1, LIMIT * MINUTE_MS - 1)).toMatchObject({ lastSeq: 1 });
  });

  it("is handed in by the bench as it stands, though the preparation that is required was not confirmed", async () => {
    const { sittingId } = await open();
    await save(sittingId, 1, 1000);
    await expect(endOnTime(sittingId, 1)).rejects.toMatchObject({ code: "conflict" });
    await expect(handIn(ben, { sittingId, writerId: WRITER, lastSeq: 1 })).rejects.toMatchObject({
      code: "bad-input",
    });
    pass(LIMIT * MINUTE_MS - 2000);
    await endOnTime(sittingId, 1);
    expect(await readHandIn(sittingId)).toMatchObject({ timedOut: true, lastSeq: 1 });
    expect((await getBench(ben, sittingId)).timedOut).toBe(true);
  });

  it("is not handed in on time by a device that another has taken over from", async () => {
    const { sittingId } = await open();
    await save(sittingId, 1, 1000);
    pass(LIMIT * MINUTE_MS);
    const other = handIn(ben, { sittingId, writerId: "another-writer", lastSeq: 1, isTimeOut: true });
    await expect(other).rejects.toMatchObject({ code: "taken-over" });
  });

  it("is handed in by the server when no browser is left, once, at the moment when it ran out", async () => {
    const { sittingId } = await open();
    const endsAt = new Date(Date.now() + LIMIT * MINUTE_MS);
    await save(sittingId, 1, 1000);
    pass(LIMIT * MINUTE_MS + GRACE_MS - 1);
    expect(await handInOverdue()).toEqual({ handedIn: 0 });
    pass(3_600_000);
    const sweeps = await Promise.all([handInOverdue(), handInOverdue({ studentId: ben.userId })]);
    expect(sweeps.reduce((sum, { handedIn }) => sum + handedIn, 0)).toBe(1);
    expect(await readHandIn(sittingId)).toMatchObject({ timedOut: true, handedInAt: endsAt });
    const grid = await getReviewGrid(school.iris, school.exerciseId);
    expect(grid.cells.find((cell) => cell.sittingId === sittingId)).toMatchObject({
      state: "scored",
      timedOut: true,
      markCount: 1,
    });
    expect((await getDebrief(school.iris, sittingId)).timedOut).toBe(true);
    const { rows } = await listTrail(school.director, { page: 1 });
    expect(rows[0]).toMatchObject({
      action: "hand-in",
      actorName: "Loupework",
      subjectId: sittingId,
      detail: "the time ran out",
    });
  });
});

describe("extra time", () => {
  const grant = (extraMinutes: number) =>
    grantExtraTime(school.iris, {
      exerciseId: school.exerciseId,
      studentId: ben.userId,
      extraMinutes,
      reason: "reads slowly",
    });
  const minutesOf = async (sittingId: string) => {
    const { openedAt, endsAt } = await getBench(ben, sittingId);
    return (Date.parse(endsAt ?? "") - Date.parse(openedAt)) / MINUTE_MS;
  };

  it("is in what the student is told and agrees to, and in nobody else's", async () => {
    await grant(10);
    expect((await listMyExercises(ben))[0]?.minutesPerStone).toBe(30);
    expect((await listMyExercises(school.ada))[0]?.minutesPerStone).toBe(LIMIT);
    await expect(open(LIMIT)).rejects.toMatchObject({ code: "conflict" });
    expect(await minutesOf((await open(30)).sittingId)).toBe(30);
  });

  it("reaches a stone on the bench at once, with the next save, and is not taken back from it", async () => {
    const { sittingId } = await open();
    pass(LIMIT * MINUTE_MS + 10_000);
    await grant(10);
    const { endsAt } = await save(sittingId, 1, LIMIT * MINUTE_MS + 9000);
    expect(endsAt).toBe((await getBench(ben, sittingId)).endsAt);
    expect(await minutesOf(sittingId)).toBe(30);
    await grant(0);
    expect(await minutesOf(sittingId)).toBe(30);
    expect((await listMyExercises(ben))[0]?.minutesPerStone).toBe(LIMIT);
  });

  it("is for the section's own students, and its reason is not in the trail", async () => {
    const given = { exerciseId: school.exerciseId, extraMinutes: 5, reason: "reads slowly" };
    const stranger = grantExtraTime(school.iris, { ...given, studentId: school.cyd.userId });
    await expect(stranger).rejects.toMatchObject({ code: "not-found" });
    await grantExtraTime(school.iris, { ...given, studentId: ben.userId });
    const { rows } = await listTrail(school.director, { page: 1 });
    expect(rows[0]).toMatchObject({ action: "grant-extra-time", detail: "Ben Student: 5 minutes" });
    expect(JSON.stringify(rows)).not.toContain("reads slowly");
  });
});

const minutesLeft = async (sittingId: string) =>
  (Date.parse((await getBench(ben, sittingId)).endsAt ?? "") - Date.now()) / MINUTE_MS;

describe("a server's clock that is set", () => {
  it.each([3_600_000, -3_600_000])(
    "moves the end with it, by %d ms, so that nobody gains or loses",
    async (byMs) => {
      const { sittingId } = await open();
      const before = Date.parse((await getBench(ben, sittingId)).endsAt ?? "");
      await save(sittingId, 1, 1000);
      pass(5 * MINUTE_MS);
      setClock(byMs);
      expect(await handInOverdue()).toEqual({ handedIn: 0 });
      const { endsAt } = await save(sittingId, 2, 5 * MINUTE_MS);
      expect(Date.parse(endsAt ?? "") - before).toBe(byMs);
      pass(15 * MINUTE_MS + GRACE_MS);
      expect(await handInOverdue()).toEqual({ handedIn: 1 });
      expect(await readHandIn(sittingId)).toMatchObject({ timedOut: true, lastSeq: 2 });
    },
  );

  it("still takes within the grace what was made in time", async () => {
    const { sittingId } = await open();
    pass(5 * MINUTE_MS);
    setClock(-3_600_000);
    pass(15 * MINUTE_MS + 1000);
    expect(await save(sittingId, 1, 10 * MINUTE_MS)).toMatchObject({ lastSeq: 1 });
    await expect(save(sittingId, 2, 21 * MINUTE_MS)).rejects.toMatchObject({ code: "closed" });
  });

  it("gives a stone that is opened just afterwards its own time", async () => {
    setClock(3_600_000);
    expect(await minutesLeft((await open()).sittingId)).toBe(LIMIT);
    await handInOverdue();
    expect(await minutesLeft((await open()).sittingId)).toBe(LIMIT);
  });
});
