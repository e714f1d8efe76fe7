/** The importers with their database: what is refused must leave every table as it was, what is taken must come out again. */
import type { Viewer } from "@/lib/access/viewer";
import { createSeededRandom, type SeededRandom } from "@/lib/base/seeded-random";
import { exportTraySet } from "@/lib/data/export-tray-set";
import { getDatabase } from "@/lib/data/store/database";
import { parseJson } from "@/lib/exchange/parse-json";
import { writeExerciseSet } from "@/lib/exchange/write-exercise-set";
import { ExerciseSetSchema } from "@/lib/plot/exercise-set";
import type { SittingEvent } from "@/lib/plot/sitting-event";
import { importExerciseSet } from "@/lib/workflows/import-exercise-set";
import { importRoster } from "@/lib/workflows/import-roster";
import { planExerciseSetImport } from "@/lib/workflows/plan-exercise-set-import";
import { planRosterImport } from "@/lib/workflows/plan-roster-import";
import { saveEvents } from "@/lib/workflows/save-events";
import { hashTables } from "@/tests/fuzz/hash-tables";
import { BrokenPromise, type CaseOutcome, judgeCase } from "@/tests/fuzz/judge-case";
import { mutateJson } from "@/tests/fuzz/mutate-json";
import { drawOneRoster, drawPlainRoster, drawZippedRoster } from "@/tests/fuzz/mutate-roster";
import { drawBrokenSet } from "@/tests/fuzz/try-readers";
import { type School, WRITER } from "@/tests/support/school";
import { makeMark } from "@/tests/support/school-marks";

type Trial = (school: School, random: SeededRandom) => () => Promise<void>;

/** As an action's body or a file gives it: what JSON can say, own keys like `__proto__` among it. */
const overTheWire = (value: unknown) => parseJson(JSON.stringify(value));

function trySet(school: School, random: SeededRandom): () => Promise<void> {
  const json = parseJson(drawBrokenSet(random));
  const trayId = random.chance(0.5) ? school.trayId : null;
  const input = { json, trayId, trayName: "Broken" };
  return async () => {
    const { faults } = await planExerciseSetImport(school.director, input);
    const done = await importExerciseSet(school.director, input);
    if (faults.length > 0) throw new BrokenPromise("the dry run refused what the import took");
    const out = await exportTraySet(school.director, done.trayId);
    const wanted = ExerciseSetSchema.parse(json).stones;
    const labels = new Set(wanted.map(({ id }) => id));
    const got = out.stones.filter(({ id }) => labels.has(id));
    const byLabel = (a: { id: string }, b: { id: string }) => (a.id < b.id ? -1 : 1);
    const write = (stones: typeof got) =>
      writeExerciseSet({ ...out, title: "-", stones: [...stones].sort(byLabel) });
    if (write(got) !== write(wanted)) throw new BrokenPromise("what was taken comes out otherwise");
  };
}

function tryRoster({ director }: School, random: SeededRandom): () => Promise<void> {
  const drawn = random.pick([drawPlainRoster, drawOneRoster, drawZippedRoster])(random);
  const files = drawn.map(({ name, bytes }) => ({ name, bytes: new Uint8Array(bytes) }));
  const input = { files, termOfNew: random.pick(["", "2026 autumn"]) };
  return async () => {
    const { fingerprint, rows, faults } = await planRosterImport(director, input);
    await importRoster(director, { ...input, fingerprint });
    if (faults.length > 0) throw new BrokenPromise("the dry run refused what the import took");
    const again = await planRosterImport(director, input);
    const isSame = again.rows.every(({ state }) => state === "same" || state === "left-out");
    if (!isSame || again.rows.length !== rows.length) {
      throw new BrokenPromise("brought in once more, the same roster would change something");
    }
  };
}

async function findSitting({ ada, adaOnBench }: School): Promise<{ viewer: Viewer; lastSeq: number }> {
  const { lastSeq } = await getDatabase().sitting.findUniqueOrThrow({ where: { id: adaOnBench } });
  return { viewer: ada, lastSeq };
}

function makeEvents(from: number): SittingEvent[] {
  const mark = { ...makeMark("m2", 0.2), confidence: 3, proofs: ["wiped"] as const };
  return [
    { seq: from, atMs: 3000, kind: "marks", put: [{ ...mark, proofs: [...mark.proofs] }], removed: ["m1"] },
    { seq: from + 1, atMs: 4000, kind: "grade", property: "clarity", grade: "VS2" },
    { seq: from + 2, atMs: 5000, kind: "prepared", step: "cleaned", done: true },
  ];
}

function tryEvents(school: School, random: SeededRandom): () => Promise<void> {
  return async () => {
    const { viewer, lastSeq } = await findSitting(school);
    const kind = random.pick(["structure", "value"] as const);
    const input = { sittingId: school.adaOnBench, writerId: WRITER, events: makeEvents(lastSeq + 1) };
    const isWhole = random.chance(0.1);
    const broken = overTheWire(isWhole ? input : mutateJson(input, kind, random)) as Parameters<
      typeof saveEvents
    >[1];
    await saveEvents(viewer, broken);
  };
}

export const IMPORTER_KINDS = {
  "set import": trySet,
  "roster import": tryRoster,
  "bench events": tryEvents,
} as const satisfies Record<string, Trial>;
export type ImporterKind = keyof typeof IMPORTER_KINDS;

/** The case of that number, on the school's database; anything written by what was refused is a crash. */
export async function tryImporter(
  kind: ImporterKind,
  school: School,
  seed: number,
  index: number,
): Promise<CaseOutcome & { at: string }> {
  const at = `${kind} ${seed}:${index}`;
  const trial = IMPORTER_KINDS[kind](school, createSeededRandom(at));
  const before = await hashTables();
  const outcome = await judgeCase(trial, kind === "bench events" ? EVENT_CODES : []);
  if (outcome.verdict !== "refused" || (await hashTables()) === before) return { at, ...outcome };
  return { at, ...outcome, verdict: "crashed", why: "refused, and yet something was written" };
}

/** A log that is not whole, or somebody else's: what a bench is told besides faults. */
const EVENT_CODES = ["conflict", "not-found", "taken-over"] as const;
