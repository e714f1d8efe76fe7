/** Gives a simulated student's marks their times, and writes the log that the bench would have kept of them. */
import type { SeededRandom } from "@/lib/base/seeded-random";
import type { DraftMark } from "@/lib/demo/draft-mark";
import type { MarkOrigin } from "@/lib/demo/ground-truth";
import type { StudentSkill } from "@/lib/demo/student-skill";
import { GRADED_PROPERTIES, type PlotGrades } from "@/lib/plot/grades";
import type { PlottedMark, Proof } from "@/lib/plot/mark";
import { mapVertices, type Shape } from "@/lib/plot/shape";
import { PREPARATION_STEPS, type SittingEvent } from "@/lib/plot/sitting-event";

/** Within a burst the next dot comes after this long, ms: below the 1.5 s by which the rubric knows a burst. */
const BURST_GAP_MS = { least: 350, spread: 900 };
/** Between marks the time is log-normal about the student's pace, with this standard deviation of its logarithm. */
const PACE_SPREAD = 0.5;
/** How far off a mark was that is moved on second thoughts (girdle widths). */
const FIRST_MISS = 0.04;
/** Of second thoughts, the share that take the mark back. */
const TAKEN_BACK_SHARE = 0.25;

export interface LoggedSitting {
  readonly events: readonly SittingEvent[];
  readonly handedInAtMs: number;
  /** For every mark that was ever put, also those taken back. */
  readonly origins: ReadonlyMap<string, MarkOrigin>;
}

type Untimed<Event> = Event extends SittingEvent ? Omit<Event, "seq" | "atMs"> : never;

/** Writes events one after another on a running clock. */
class SittingLog {
  readonly events: SittingEvent[] = [];
  nowMs = 0;

  wait(ms: number): void {
    this.nowMs += Math.max(1, Math.round(ms));
  }

  write(event: Untimed<SittingEvent>): void {
    this.events.push({ seq: this.events.length + 1, atMs: this.nowMs, ...event });
  }

  put(mark: PlottedMark): void {
    this.write({ kind: "marks", put: [mark], removed: [] });
  }
}

/** Marks in the order of drawing: the crown first, bursts kept together, otherwise as the eye wanders. */
function orderDrafts(random: SeededRandom, drafts: readonly DraftMark[]): DraftMark[][] {
  const units = new Map<string, DraftMark[]>();
  drafts.forEach((draft, index) => {
    const key = draft.burst === null ? `mark ${index}` : `burst ${draft.burst}`;
    units.set(key, [...(units.get(key) ?? []), draft]);
  });
  const wandering = random.shuffle([...units.values()]);
  const isCrown = (unit: DraftMark[]) => unit[0]?.view === "crown";
  return [...wandering.filter(isCrown), ...wandering.filter((unit) => !isCrown(unit))];
}

function logPreparation(
  log: SittingLog,
  random: SeededRandom,
  skill: StudentSkill,
  isCleaned: boolean,
): void {
  const chances = { cleaned: isCleaned ? 1 : 0, held: 0.9, tilted: 0.3 + 0.6 * skill.wiping, regripped: 0.4 };
  for (const step of PREPARATION_STEPS) {
    log.wait(4000 + 9000 * random.next());
    if (random.chance(chances[step])) log.write({ kind: "prepared", step, done: true });
  }
}

function drawProofs(random: SeededRandom, draft: DraftMark, skill: StudentSkill): Proof[] {
  if (draft.origin.kind === "stray" && draft.origin.cause === "dust") return [];
  const isSteady = draft.origin.kind !== "stray";
  const proofs: Proof[] = [];
  if (random.chance(skill.wiping)) proofs.push("wiped");
  if (isSteady && random.chance(0.6 * skill.wiping)) proofs.push("tilted");
  if (isSteady && random.chance(0.25 * skill.wiping)) proofs.push("regripped");
  return proofs;
}

/** Where a mark was put at first by a student who then moved it: off, and drawn in so that it stays on the stone. */
function drawFirstMiss(random: SeededRandom, shape: Shape): Shape {
  const angle = 2 * Math.PI * random.next();
  const inward = 1 - 2 * FIRST_MISS;
  return mapVertices(shape, ([x, y]) => [
    inward * x + FIRST_MISS * Math.cos(angle),
    inward * y + FIRST_MISS * Math.sin(angle),
  ]);
}

/** One mark drawn by itself: put, perhaps moved or taken back, and proved. */
function logMark(
  log: SittingLog,
  random: SeededRandom,
  draft: DraftMark,
  mark: PlottedMark,
  skill: StudentSkill,
) {
  const isUnsure = random.chance(skill.secondThoughts);
  log.put(isUnsure ? { ...mark, shape: drawFirstMiss(random, mark.shape) } : mark);
  if (isUnsure) {
    log.wait(4000 + 11_000 * random.next());
    if (random.chance(TAKEN_BACK_SHARE)) {
      log.write({ kind: "marks", put: [], removed: [mark.id] });
      return;
    }
    log.put(mark);
  }
  const proofs = drawProofs(random, draft, skill);
  if (proofs.length === 0) return;
  log.wait(2500 + 6000 * random.next());
  log.put({ ...mark, proofs });
}

function logGrades(log: SittingLog, random: SeededRandom, grades: PlotGrades): void {
  for (const property of GRADED_PROPERTIES) {
    const grade = grades[property];
    if (grade === undefined) continue;
    log.wait(3000 + 9000 * random.next());
    log.write({ kind: "grade", property, grade });
  }
}

/** The log of a whole sitting. Marks are numbered `m1`, `m2` … as they are put; `atMs` of a mark is when it first was. */
export function logSitting(
  random: SeededRandom,
  drafts: readonly DraftMark[],
  grades: PlotGrades,
  skill: StudentSkill,
  isCleaned: boolean,
): LoggedSitting {
  const log = new SittingLog();
  const origins = new Map<string, MarkOrigin>();
  logPreparation(log, random, skill, isCleaned);
  for (const unit of orderDrafts(random, drafts)) {
    log.wait(1000 * skill.paceS * Math.exp(random.normal(0, PACE_SPREAD)));
    for (const [index, draft] of unit.entries()) {
      if (index > 0) log.wait(BURST_GAP_MS.least + BURST_GAP_MS.spread * random.next());
      const { view, characteristic, shape, confidence } = draft;
      const id = `m${origins.size + 1}`;
      const mark: PlottedMark = { id, view, characteristic, shape, confidence, atMs: log.nowMs };
      origins.set(id, draft.origin);
      if (draft.burst === null) logMark(log, random, draft, mark, skill);
      else log.put(mark);
    }
  }
  logGrades(log, random, grades);
  log.wait(5000 + 15_000 * random.next());
  return { events: log.events, handedInAtMs: log.nowMs, origins };
}
