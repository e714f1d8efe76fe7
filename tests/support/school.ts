/**
 * A small school in a test's database: two sections with an instructor each, a tray of two stones with references, an
 * exercise for each section, and sittings in every state. What a student must never be sent is written in texts and
 * numbers that occur nowhere else, so that a payload can be searched for them.
 */
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import type { PlottedMark } from "@/lib/plot/mark";
import { DEFAULT_RUBRIC, type Rubric, RubricSchema } from "@/lib/plot/rubric";
import type { ReadingPlot } from "@/lib/plot/second-reading";
import type { Role } from "@/lib/plot/staff-view";
import type { Reference } from "@/lib/plot/stone";
import { addPhoto } from "@/lib/workflows/add-photo";
import { claimBench } from "@/lib/workflows/claim-bench";
import { createExercise } from "@/lib/workflows/create-exercise";
import { createSection } from "@/lib/workflows/create-section";
import { createStone } from "@/lib/workflows/create-stone";
import { createTray } from "@/lib/workflows/create-tray";
import { enrolStudents } from "@/lib/workflows/enrol-students";
import { handIn } from "@/lib/workflows/hand-in";
import { handInSecondReading } from "@/lib/workflows/hand-in-second-reading";
import { hashPassword } from "@/lib/workflows/hash-password";
import { judgeStoneChecks } from "@/lib/workflows/judge-stone-checks";
import { openSitting } from "@/lib/workflows/open-sitting";
import { overrule } from "@/lib/workflows/overrule";
import { releaseDebriefs } from "@/lib/workflows/release-debriefs";
import { runRescore } from "@/lib/workflows/run-rescore";
import { saveEvents } from "@/lib/workflows/save-events";
import { saveReference } from "@/lib/workflows/save-reference";
import { saveSecondReading } from "@/lib/workflows/save-second-reading";
import { scoreHandIn } from "@/lib/workflows/score-hand-in";
import { sendNotes } from "@/lib/workflows/send-notes";
import { sendStoneCheck } from "@/lib/workflows/send-stone-check";
import { startRescore } from "@/lib/workflows/start-rescore";
import { startSecondReading } from "@/lib/workflows/start-second-reading";
import { ensureTallySums } from "@/lib/workflows/tally/list-tally-sums";
import { writeComment } from "@/lib/workflows/write-comment";
import { makePicture } from "@/tests/support/make-picture";

export const PASSWORD = "a loupe of ten";
export const WRITER = "writer-of-the-tests";
export const DAY_MS = 86_400_000;

/** Texts and digits that only a reference, a decoy or another student's work holds. */
export const SECRETS = {
  reference: ["reference-secret", "0.1357911", "note-secret"],
  decoy: ["decoy-secret", "0.2468013"],
  /** Of Ada, Ben and Cyd: a coordinate of each one's plot. */
  ada: ["0.0314159"],
  ben: ["0.1271828"],
  cyd: ["0.0161803"],
  /** Of Otto's second readings. */
  reading: ["reading-secret", "0.0577215"],
  /** What Iris ruled and wrote of Ada's plot, which is not released. */
  review: ["overrule-secret", "comment-secret"],
} as const;

/** The reference of both stones. */
export const REFERENCE: Reference = {
  grades: { clarity: "SI2", colour: "H" },
  marks: [
    {
      id: "reference-secret-1",
      view: "crown",
      characteristic: "laser-drill-hole",
      shape: { kind: "dot", at: [0.1357911, 0.05] },
      depth: 0.3,
      weight: 3,
      decidesGrade: true,
    },
    {
      id: "reference-secret-2",
      view: "crown",
      characteristic: "feather",
      shape: {
        kind: "stroke",
        points: [
          [-0.2, 0.1],
          [-0.25, 0.1357911],
        ],
      },
    },
  ],
  decoys: [
    { id: "decoy-secret-1", view: "crown", cause: "echo", shape: { kind: "dot", at: [0.2468013, -0.1] } },
  ],
};

/** Otto's second reading of either stone: one mark of the reference, another name for it, and one of his own. */
export const READING: ReadingPlot = {
  grades: { clarity: "SI1", colour: "H" },
  marks: [
    {
      id: "reading-secret-1",
      view: "crown",
      characteristic: "crystal",
      shape: { kind: "dot", at: [0.1357911, 0.0577215] },
    },
    {
      id: "reading-secret-2",
      view: "pavilion",
      characteristic: "pinpoint",
      shape: { kind: "dot", at: [0, -0.3] },
    },
  ],
  decoys: [],
};

/** Every plot of the school gains by it: a grade three steps away earns something, and place counts for more. */
export const LENIENT_RUBRIC: Rubric = {
  ...DEFAULT_RUBRIC,
  parts: { location: 0.7, type: 0.2, extent: 0.1 },
  gradeCredit: [1, 0.6, 0.4, 0.2],
};

/** A dot at which a plot can be told from every other. */
export function makeMark(id: string, x: number, y = 0.05): PlottedMark {
  return { id, view: "crown", characteristic: "crystal", shape: { kind: "dot", at: [x, y] }, atMs: 1000 };
}

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

/** The same school with a second version of the first exercise's rubric, and a rescore by it that waits. */
export async function addRescore(school: School): Promise<School> {
  const { exerciseId, iris } = school;
  const body = toColumn(RubricSchema, LENIENT_RUBRIC);
  await getDatabase().rubricVersion.create({
    data: { exerciseId, version: 2, body, authorId: iris.userId },
  });
  const { rescoreId } = await startRescore(iris, { exerciseId });
  await runRescore(rescoreId);
  return { ...school, rescoreId };
}

/** What a student sees of a stone in hand, for the hand-in check. */
export const SEEN = { marks: [makeMark("m1", 0.0314159)], weightCt: null, isHeldByLandmark: false };

async function review({ iris, adaScored: sittingId }: School) {
  const { revision } = await overrule(iris, {
    sittingId,
    baseRevision: 0,
    ruling: { kind: "grade", property: "clarity", credit: 0.5 },
    reason: "overrule-secret",
  });
  const { commentId } = await writeComment(iris, {
    sittingId,
    baseRevision: revision,
    commentId: null,
    subject: null,
    text: "comment-secret",
  });
  const { id } = await getDatabase().overrule.findFirstOrThrow({ where: { sittingId } });
  return { overruleId: id, commentId };
}

/**
 * The same school with a photograph of the first stone, hidden, a check that Ada sent of it, and Iris's review of Ada's
 * scored plot.
 */
export async function addDesk(school: School): Promise<School> {
  const { photoId } = await addPhoto(school.iris, {
    stoneId: school.stoneIds[0],
    bytes: await makePicture(),
  });
  const [exerciseStoneId] = school.exerciseStoneIds;
  const { checkId } = await sendStoneCheck(school.ada, { exerciseStoneId, evidence: SEEN });
  await judgeStoneChecks();
  return { ...school, photoId, checkId, ...(await review(school)) };
}

/** Makes the sums that the first reader would make: what is derived is then no write of the call that is watched. */
export async function addSums(school: School): Promise<School> {
  const exercises = await getDatabase().exercise.findMany({ select: { id: true } });
  await ensureTallySums(exercises.map(({ id }) => id));
  return school;
}
