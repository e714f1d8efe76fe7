/**
 * A small school in a test's database: two sections with an instructor each, a tray of two stones with references, an
 * exercise for each section, and sittings in every state. What a student must never be sent is written in texts and
 * numbers that occur nowhere else, so that a payload can be searched for them.
 */
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import type { Role } from "@/lib/plot/staff-view";
import { claimBench } from "@/lib/workflows/claim-bench";
import { createExercise } from "@/lib/workflows/create-exercise";
import { createSection } from "@/lib/workflows/create-section";
import { createStone } from "@/lib/workflows/create-stone";
import { createTray } from "@/lib/workflows/create-tray";
import { enrolStudents } from "@/lib/workflows/enrol-students";
import { handIn } from "@/lib/workflows/hand-in";
import { handInSecondReading } from "@/lib/workflows/hand-in-second-reading";
import { hashPassword } from "@/lib/workflows/hash-password";
import { openSitting } from "@/lib/workflows/open-sitting";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { saveEvents } from "@/lib/workflows/save-events";
import { saveReference } from "@/lib/workflows/save-reference";
import { saveSecondReading } from "@/lib/workflows/save-second-reading";
import { scoreHandIn } from "@/lib/workflows/score-hand-in";
import { sendNotes } from "@/lib/workflows/send-notes";
import { startSecondReading } from "@/lib/workflows/start-second-reading";
import { ensureTallySums } from "@/lib/workflows/tally/list-tally-sums";
import { makeMark, READING, REFERENCE } from "@/tests/support/school-marks";

export const PASSWORD = "a loupe of ten";

export const WRITER = "writer-of-the-tests";

export const DAY_MS = 86_400_000;

/** An account without the sign-in, made past the workflow: hashing for each would only cost time. */
export async function makePerson(
  login: string,
  name: string,
  role: Role,
  passwordHash = "-",
): Promise<Viewer> {
  const user = await getDatabase().user.create({ data: { login, name, role, passwordHash } });
  return { userId: user.id, role, name };
}

export interface School {
  readonly director: Viewer;
  /** Teaches the first section and owns the tray. */
  readonly iris: Viewer;
  /** Teaches the second section. */
  readonly otto: Viewer;
  /** Ada and Ben are in the first section, Cyd in the second. */
  readonly ada: Viewer;
  readonly ben: Viewer;
  readonly cyd: Viewer;
  readonly sectionId: string;
  readonly otherSectionId: string;
  readonly trayId: string;
  readonly stoneIds: readonly [string, string];
  /** Of the first section, open, both stones. */
  readonly exerciseId: string;
  readonly exerciseStoneIds: readonly [string, string];
  /** Of the second section. */
  readonly otherExerciseId: string;
  readonly otherExerciseStoneId: string;
  /** Ada's: the first stone handed in and scored, the second on the bench. */
  readonly adaScored: string;
  readonly adaOnBench: string;
  /** Ben's: the first stone, handed in, scored and released. */
  readonly benReleased: string;
  /** Cyd's, in the other section, handed in. */
  readonly cydScored: string;
  /** A note of Iris's to Ada's bench, not seen yet. */
  readonly adaNote: string;
  /** A photograph of the first stone, hidden from students, and a check of the first stone by Ada; empty until `addDesk`. */
  readonly photoId: string;
  readonly checkId: string;
  /** Iris's overrule of Ada's scored plot and her comment on it, at review revision 2; empty until `addDesk`. */
  readonly overruleId: string;
  readonly commentId: string;
  /** Otto's second readings: of the first stone, handed in; of the second, on the way. */
  readonly readingId: string;
  readonly openReadingId: string;
  /** A rescore of the first exercise that is ready to be applied; empty until `addRescore`. */
  readonly rescoreId: string;
}

async function makePeople() {
  const hash = await hashPassword(PASSWORD);
  return {
    director: await makePerson("dora", "Dora Director", "director", hash),
    iris: await makePerson("iris", "Iris Instructor", "instructor", hash),
    otto: await makePerson("otto", "Otto Instructor", "instructor", hash),
    ada: await makePerson("ada", "Ada Student", "student", hash),
    ben: await makePerson("ben", "Ben Student", "student", hash),
    cyd: await makePerson("cyd", "Cyd Student", "student", hash),
  };
}

type People = Awaited<ReturnType<typeof makePeople>>;

async function makeStones({ iris }: People) {
  const { trayId } = await createTray(iris, { name: "First tray", notes: "" });
  const body = { cut: "round-brilliant" as const, proportions: { tablePct: 57 } };
  const stoneIds: string[] = [];
  for (const label of ["T-1", "T-2"]) {
    const { stoneId } = await createStone(iris, { trayId, label, body });
    await saveReference(iris, { stoneId, baseVersion: 0, reference: REFERENCE, note: "note-secret" });
    stoneIds.push(stoneId);
  }
  return { trayId, stoneIds: [stoneIds[0] ?? "", stoneIds[1] ?? ""] as const };
}

/** Dates of an exercise that is open now. */
export function makeOpenDates() {
  const at = (days: number) => new Date(Date.now() + days * DAY_MS).toISOString();
  return { opensAt: at(-1), dueAt: at(1), closesAt: at(2), debriefsAt: null };
}

async function setExercise(by: Viewer, sectionId: string, stoneIds: readonly string[]) {
  const { exerciseId } = await createExercise(by, {
    sectionId,
    title: "First look",
    notes: "",
    ...makeOpenDates(),
    rules: {},
    stoneIds: [...stoneIds],
  } as Parameters<typeof createExercise>[1]);
  const rows = await getDatabase().exerciseStone.findMany({
    where: { exerciseId },
    orderBy: { position: "asc" },
  });
  return { exerciseId, exerciseStoneIds: rows.map(({ id }) => id) };
}

/** Opens a sitting and saves one mark and a grade in it. */
export async function plot(student: Viewer, exerciseStoneId: string, x: number): Promise<string> {
  const { sittingId } = await openSitting(student, { exerciseStoneId });
  await claimBench(student, { sittingId, writerId: WRITER, takeOver: false });
  await saveEvents(student, {
    sittingId,
    writerId: WRITER,
    events: [
      { seq: 1, atMs: 1000, kind: "marks", put: [makeMark("m1", x)], removed: [] },
      { seq: 2, atMs: 2000, kind: "grade", property: "clarity", grade: "VS1" },
    ],
  });
  return sittingId;
}

/** The same, handed in and scored. */
export async function plotAndHandIn(student: Viewer, exerciseStoneId: string, x: number): Promise<string> {
  const sittingId = await plot(student, exerciseStoneId, x);
  const { handInId } = await handIn(student, { sittingId, writerId: WRITER, lastSeq: 2 });
  await scoreHandIn(handInId);
  return sittingId;
}

async function readSecond(by: Viewer, stoneIds: readonly [string, string]) {
  const [{ readingId }, open] = [
    await startSecondReading(by, { stoneId: stoneIds[0] }),
    await startSecondReading(by, { stoneId: stoneIds[1] }),
  ];
  await handInSecondReading(by, { readingId, revision: 1, plot: READING });
  await saveSecondReading(by, { readingId: open.readingId, revision: 1, plot: READING });
  return { readingId, openReadingId: open.readingId };
}

/** Builds the school in the database that this process points at. */
export async function buildSchool(): Promise<School> {
  const people = await makePeople();
  const { director, iris, otto, ada, ben, cyd } = people;
  const { trayId, stoneIds } = await makeStones(people);
  const section = async (name: string, instructorIds: string[]) =>
    (await createSection(director, { name, term: "2026 autumn", instructorIds })).sectionId;
  const sectionId = await section("Morning", [iris.userId]);
  const otherSectionId = await section("Evening", [otto.userId]);
  await enrolStudents(iris, { sectionId, studentIds: [ada.userId, ben.userId] });
  await enrolStudents(otto, { sectionId: otherSectionId, studentIds: [cyd.userId] });
  const first = await setExercise(iris, sectionId, stoneIds);
  const other = await setExercise(otto, otherSectionId, [stoneIds[0]]);
  const [one = "", two = ""] = first.exerciseStoneIds;
  const [third = ""] = other.exerciseStoneIds;
  const adaScored = await plotAndHandIn(ada, one, 0.0314159);
  const adaOnBench = await plot(ada, two, 0.0314159);
  const benReleased = await plotAndHandIn(ben, one, 0.1271828);
  const cydScored = await plotAndHandIn(cyd, third, 0.0161803);
  await releaseDebriefs(iris, { sittingIds: [benReleased] });
  await sendNotes(iris, { sittingIds: [adaOnBench], text: "Clean it and look again." });
  const note = await getDatabase().benchNote.findFirstOrThrow({ where: { sittingId: adaOnBench } });
  const reading = await readSecond(otto, stoneIds);
  // As whoever has looked at a report leaves it: a refusal then writes nothing.
  await ensureTallySums([first.exerciseId, other.exerciseId]);
  return {
    ...people,
    ...reading,
    sectionId,
    otherSectionId,
    trayId,
    stoneIds,
    exerciseId: first.exerciseId,
    exerciseStoneIds: [one, two],
    otherExerciseId: other.exerciseId,
    otherExerciseStoneId: third,
    adaScored,
    adaOnBench,
    adaNote: note.id,
    benReleased,
    cydScored,
    photoId: "",
    checkId: "",
    overruleId: "",
    commentId: "",
    rescoreId: "",
  };
}
