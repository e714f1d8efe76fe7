/** The watch from end to end on the server: the whole truth first, then changes, to whom they are for and nobody else. */
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { GET as getNotes } from "@/app/api/sittings/[sittingId]/notes/stream/route";
import { GET as pollWatch } from "@/app/api/watch/route";
import { GET as streamWatch } from "@/app/api/watch/stream/route";
import type { Viewer } from "@/lib/access/viewer";
import { getBenchWatch } from "@/lib/data/get-bench-watch";
import { listMyNotes } from "@/lib/data/list-my-notes";
import { listWatch } from "@/lib/data/list-watch";
import { closeStreams } from "@/lib/data/open-streams";
import { closeDatabase, getDatabase } from "@/lib/data/store/database";
import { LONGEST_NOTE, StudentNotesSchema } from "@/lib/plot/bench-note";
import { WatchChangeSchema, WatchSchema } from "@/lib/plot/watch-view";
import { handIn } from "@/lib/workflows/hand-in";
import { noteBench } from "@/lib/workflows/note-bench";
import { openSitting } from "@/lib/workflows/open-sitting";
import { saveEvents } from "@/lib/workflows/save-events";
import { seeNote } from "@/lib/workflows/see-note";
import { sendNotes } from "@/lib/workflows/send-notes";
import { beSignedIn } from "@/tests/support/cookie-jar";
import { createTestDatabase, type TestDatabase } from "@/tests/support/database";
import { readStream } from "@/tests/support/read-stream";
import { buildSchool, type School, WRITER } from "@/tests/support/school";
import { makeMark } from "@/tests/support/school-marks";

vi.mock("next/headers", async () => ({ cookies: (await import("@/tests/support/cookie-jar")).cookies }));

let database: TestDatabase;
let school: School;
beforeAll(async () => {
  database = await createTestDatabase();
  school = await buildSchool();
});
afterAll(() => database.remove());

const request = () => new Request("http://loupework.test/api/watch/stream");

async function openWatch(viewer: Viewer) {
  await beSignedIn(viewer);
  const reader = readStream(await streamWatch(request()));
  return {
    ...reader,
    whole: async () => WatchSchema.parse((await reader.next("whole"))?.data),
    change: async () => WatchChangeSchema.parse((await reader.next("change"))?.data),
  };
}

async function findRow(viewer: Viewer, sittingId: string) {
  return (await listWatch(viewer)).rows.find((row) => row.sittingId === sittingId);
}

let seq = 2;
/** Adds quick dots to Ada's open stone, 300 ms apart, from a moment of the sitting on. */
async function dot(count: number, fromMs: number): Promise<void> {
  const events = Array.from({ length: count }, (_, index) => {
    seq += 1;
    const mark = { ...makeMark(`dot-${seq}`, -0.2 + 0.01 * seq), atMs: fromMs + 300 * index };
    return { seq, atMs: fromMs + 300 * index, kind: "marks" as const, put: [mark], removed: [] };
  });
  await saveEvents(school.ada, { sittingId: school.adaOnBench, writerId: WRITER, events });
}

describe("the stream", () => {
  it("tells everything first and then what changes, dotting among it", async () => {
    const watch = await openWatch(school.iris);
    const whole = await watch.whole();
    expect(whole.rows.map(({ sittingId }) => sittingId).sort()).toEqual(
      [school.adaScored, school.adaOnBench, school.benReleased].sort(),
    );
    const before = whole.rows.find(({ sittingId }) => sittingId === school.adaOnBench);
    expect(before).toMatchObject({ studentName: "Ada Student", stoneLabel: "T-2", markCount: 1, lastSeq: 2 });
    expect(before?.dotting).toBeNull();
    expect(whole.rows.find(({ sittingId }) => sittingId === school.adaScored)?.handedInAt).not.toBeNull();

    await dot(6, 10_000);
    const { put, removed } = await watch.change();
    expect(removed).toEqual([]);
    expect(put).toHaveLength(1);
    expect(put[0]).toMatchObject({ sittingId: school.adaOnBench, markCount: 7, lastSeq: 8 });
    expect(put[0]?.dotting?.dots).toBe(6);
    await watch.cancel();
  });

  it("gives somebody who comes back the truth at once, and the truth is the database's after a restart", async () => {
    const first = await openWatch(school.iris);
    await first.whole();
    await first.cancel();
    await dot(1, 60_000);
    await closeDatabase();
    const again = await openWatch(school.iris);
    const row = (await again.whole()).rows.find(({ sittingId }) => sittingId === school.adaOnBench);
    expect(row).toMatchObject({ markCount: 8, lastSeq: 9, dotting: null });
    expect(WatchSchema.parse(await (await pollWatch()).json()).rows).toContainEqual(row);
    await again.cancel();
  });

  it("tells another section's instructor nothing, and a director all", async () => {
    const otto = await openWatch(school.otto);
    expect((await otto.whole()).rows.map(({ sittingId }) => sittingId)).toEqual([school.cydScored]);
    const dora = await openWatch(school.director);
    expect((await dora.whole()).rows).toHaveLength(4);
    await dot(1, 70_000);
    expect((await dora.change()).put).toHaveLength(1);
    // Something of his own section comes after it: had Ada's change been told, it would have come first.
    const { sittingId } = await openSitting(
      { ...school.cyd },
      { exerciseStoneId: school.otherExerciseStoneId },
    );
    expect(sittingId).toBe(school.cydScored);
    expect(await otto.change()).toMatchObject({ put: [{ sittingId: school.cydScored }], removed: [] });
    await otto.cancel();
    await dora.cancel();
  });

  it("refuses a student as if there were no such thing", async () => {
    await beSignedIn(school.ada);
    expect((await streamWatch(request())).status).toBe(404);
    expect((await pollWatch()).status).toBe(404);
  });

  it("takes a section from the watch of whoever teaches it no more", async () => {
    const watch = await openWatch(school.iris);
    await watch.whole();
    const place = { sectionId: school.sectionId, instructorId: school.iris.userId };
    await getDatabase().sectionInstructor.delete({ where: { sectionId_instructorId: place } });
    await dot(1, 80_000);
    expect(await watch.change()).toMatchObject({ put: [], removed: [school.adaOnBench] });
    await getDatabase().sectionInstructor.create({ data: place });
    await watch.cancel();
  });

  it.each([
    ["the session was ended", { sessionEpoch: 2 }, { sessionEpoch: 1 }],
    ["the account was closed", { active: false }, { active: true }],
    ["the role became another", { role: "director" }, { role: "instructor" }],
  ] as const)("ends when %s", async (_what, change, back) => {
    vi.useFakeTimers({ toFake: ["setInterval", "clearInterval"] });
    const watch = await openWatch(school.iris);
    await watch.whole();
    await getDatabase().user.update({ where: { id: school.iris.userId }, data: change });
    await vi.advanceTimersByTimeAsync(5000);
    vi.useRealTimers();
    expect(await watch.next("signed-out")).not.toBeNull();
    expect(await watch.next("beat")).toBeNull();
    await getDatabase().user.update({ where: { id: school.iris.userId }, data: back });
  });
});

describe("a bench's presence", () => {
  it("is not known before the bench is heard of, and comes and goes with it", async () => {
    const { ben, iris } = school;
    const { sittingId } = await openSitting(ben, { exerciseStoneId: school.exerciseStoneIds[1] });
    expect((await findRow(iris, sittingId))?.presence).toBe("unheard");
    for (const presence of ["here", "away", "gone"] as const) {
      await noteBench(ben, { sittingId, presence });
      const row = await findRow(iris, sittingId);
      expect(row?.presence).toBe(presence);
      expect(row?.presenceSince).not.toBeNull();
    }
  });

  it("is gone once nothing is heard of it for a minute", async () => {
    const { ben, iris } = school;
    const { sittingId } = await openSitting(ben, { exerciseStoneId: school.exerciseStoneIds[1] });
    await noteBench(ben, { sittingId, presence: "here" });
    const heard = Date.now();
    vi.useFakeTimers({ toFake: ["Date"], now: heard + 60_000 });
    const row = await findRow(iris, sittingId);
    vi.useRealTimers();
    expect(row?.presence).toBe("gone");
    expect(Math.abs(Date.parse(row?.presenceSince ?? "") - heard)).toBeLessThan(1000);
  });
});

describe("a note", () => {
  it("reaches the bench that it was sent to at once, holds no more than it should, and is seen once", async () => {
    const { ada, iris, adaOnBench } = school;
    await beSignedIn(ada);
    const params = Promise.resolve({ sittingId: adaOnBench });
    const bench = readStream(await getNotes(request(), { params }));
    const before = StudentNotesSchema.parse((await bench.next("notes"))?.data).notes;
    await sendNotes(iris, { sittingIds: [adaOnBench, adaOnBench], text: "  Tilt\u0000it.\n" });
    const after = StudentNotesSchema.parse((await bench.next("notes"))?.data).notes;
    expect(after).toHaveLength(before.length + 1);
    const note = after.at(-1);
    expect(note?.text).toBe("Tilt it.");
    await bench.cancel();

    expect((await findRow(iris, adaOnBench))?.lastNote).toMatchObject({ text: "Tilt it.", seenAt: null });
    const noteId = note?.noteId ?? "";
    const { seenAt } = await seeNote(ada, { sittingId: adaOnBench, noteId });
    expect(await seeNote(ada, { sittingId: adaOnBench, noteId })).toEqual({ seenAt });
    expect((await findRow(iris, adaOnBench))?.lastNote?.seenAt).toBe(seenAt);
    expect((await listMyNotes(ada, adaOnBench)).map((one) => one.noteId)).not.toContain(noteId);
    expect((await getBenchWatch(iris, adaOnBench)).notes.at(-1)).toMatchObject({ noteId, seenAt });
  });

  it("is read and seen by nobody but the student that it was sent to", async () => {
    const { ben, cyd, adaOnBench, adaNote } = school;
    for (const other of [ben, cyd]) {
      await expect(listMyNotes(other, adaOnBench)).rejects.toMatchObject({ code: "not-found" });
      await expect(seeNote(other, { sittingId: adaOnBench, noteId: adaNote })).rejects.toMatchObject({
        code: "not-found",
      });
    }
    const { sittingId } = await openSitting(ben, { exerciseStoneId: school.exerciseStoneIds[1] });
    await expect(seeNote(ben, { sittingId, noteId: adaNote })).rejects.toMatchObject({ code: "not-found" });
  });

  it("must say something, and not too much", async () => {
    const { iris, adaOnBench } = school;
    for (const text of ["", " \n\t ", "x".repeat(LONGEST_NOTE + 1)]) {
      await expect(sendNotes(iris, { sittingIds: [adaOnBench], text })).rejects.toMatchObject({
        code: "bad-input",
      });
    }
    await expect(sendNotes(iris, { sittingIds: [], text: "Tilt it." })).rejects.toMatchObject({
      code: "bad-input",
    });
  });

  it("goes to all of the benches or to none, stands in the trail, and leaves out what is handed in", async () => {
    const { iris, adaOnBench, adaScored, cydScored } = school;
    const count = () => getDatabase().benchNote.count();
    const before = await count();
    await expect(
      sendNotes(iris, { sittingIds: [adaOnBench, cydScored], text: "Tilt it." }),
    ).rejects.toMatchObject({ code: "not-found" });
    expect(await count()).toBe(before);
    const done = await sendNotes(iris, { sittingIds: [adaOnBench, adaScored], text: "Tilt it." });
    expect(done).toEqual({ sent: 1, handedIn: 1 });
    expect(await count()).toBe(before + 1);
    const entry = await getDatabase().trailEntry.findFirst({ orderBy: { id: "desc" } });
    expect(entry).toMatchObject({ action: "send-note", subjectId: adaOnBench, detail: "" });
  });
});

describe("a hand-in", () => {
  it("shows on the watch", async () => {
    const watch = await openWatch(school.iris);
    await watch.whole();
    await handIn(school.ada, { sittingId: school.adaOnBench, writerId: WRITER, lastSeq: seq });
    const { put } = await watch.change();
    expect(put[0]).toMatchObject({ sittingId: school.adaOnBench });
    expect(put[0]?.handedInAt).not.toBeNull();
    await watch.cancel();
  });
});

describe("the end of the server", () => {
  it("closes every open stream, and every later one at once", async () => {
    const watch = await openWatch(school.iris);
    await watch.whole();
    closeStreams();
    expect(await watch.next("beat")).toBeNull();
    const late = await openWatch(school.iris);
    expect(await late.next("beat")).toBeNull();
  });
});
