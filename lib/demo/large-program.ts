/** The plan of the large demo: an invented program of the size that pages are measured on. Pure; the same every time. */
import { createSeededRandom } from "@/lib/base/seeded-random";
import { drawStudentSkill, type StudentSkill } from "@/lib/demo/student-skill";
import { buildSolid } from "@/lib/gem/build-solid";
import { findSymmetryTurns } from "@/lib/gem/find-symmetry-turns";
import { turnPoint } from "@/lib/gem/point";
import type { ExerciseSet } from "@/lib/plot/exercise-set";
import { mapVertices } from "@/lib/plot/shape";
import type { Stone } from "@/lib/plot/stone";

export const LARGE_PROGRAM = {
  sections: 40,
  studentsPerSection: 30,
  stones: 60,
  stonesPerTray: 5,
  exercisesPerSection: 10,
  instructors: 20,
  terms: 4,
} as const;

const DAY_MS = 86_400_000;
/** From the first day of one term to that of the next. */
const TERM_DAYS = 182;
/** The running term began this long ago, days. */
const TERM_AGE_DAYS = 84;
/** Of the running term's exercises the last so many wait for release. */
const UNRELEASED = 2;
/** What a week of practice adds to a student's eye. */
const PRACTICE = 0.07;

/** A stone turned by one of its own symmetry turns: another stone to whoever plots it. */
function turnStone({ landmark: _landmark, ...stone }: Stone, turnDeg: number): Stone {
  const turn = <M extends Stone["marks"][number] | NonNullable<Stone["decoys"]>[number]>(mark: M): M => ({
    ...mark,
    shape: mapVertices(mark.shape, (point) => turnPoint(mark.view, point, turnDeg)),
  });
  return {
    ...stone,
    marks: stone.marks.map(turn),
    ...(stone.decoys === undefined ? {} : { decoys: stone.decoys.map(turn) }),
  };
}

/** A variant of a stone, turned by one of its symmetry turns; mounted stones and those without one stay as they are. */
export function varyStone(stone: Stone, variant: number): Stone {
  if (variant === 0 || stone.prongsDeg.length > 0) return stone;
  const turns = findSymmetryTurns(buildSolid(stone.cut, stone.proportions));
  const turnDeg = turns[variant % turns.length] ?? 0;
  return turnDeg === 0 ? stone : turnStone(stone, turnDeg);
}

/** The trays, each as a set of five stones: variants of the stones of the demo's own sets, under labels of their own. */
export function planLargeSets(sources: readonly Stone[]): ExerciseSet[] {
  const { stones, stonesPerTray } = LARGE_PROGRAM;
  const all = Array.from({ length: stones }, (_, i) => {
    const stone = sources[i % sources.length];
    if (stone === undefined) throw new RangeError("planLargeSets: no stone to vary");
    const id = `L-${String(i + 1).padStart(2, "0")}`;
    return { ...varyStone(stone, Math.floor(i / sources.length)), id };
  });
  return Array.from({ length: stones / stonesPerTray }, (_, tray) => ({
    format: "loupework/exercise-set",
    version: 1,
    title: `Practice tray ${tray + 1}`,
    notes: "Stones of the large demo: invented.",
    stones: all.slice(tray * stonesPerTray, (tray + 1) * stonesPerTray),
  }));
}

export interface LargeSection {
  readonly index: number;
  readonly name: string;
  readonly term: string;
  readonly instructor: number;
  readonly startsAt: Date;
  readonly isRunning: boolean;
}

/** Sections, spread over the terms; the last term is running. `share` of the whole, 0 to 1. */
export function planLargeSections(now: Date, share: number): LargeSection[] {
  const { sections, terms, instructors } = LARGE_PROGRAM;
  return Array.from({ length: Math.round(sections * share) }, (_, index) => {
    const termsAgo = terms - 1 - (index % terms);
    const startsAt = new Date(now.getTime() - (TERM_AGE_DAYS + termsAgo * TERM_DAYS) * DAY_MS);
    const season = startsAt.getUTCMonth() < 6 ? "Spring" : "Autumn";
    return {
      index,
      name: `Clarity ${String(index + 1).padStart(2, "0")}`,
      term: `${season} ${startsAt.getUTCFullYear()}`,
      instructor: index % instructors,
      startsAt,
      isRunning: termsAgo === 0,
    };
  });
}

export interface LargeExercise {
  readonly title: string;
  /** Which tray. */
  readonly tray: number;
  readonly opensAt: Date;
  readonly dueAt: Date;
  readonly isReleased: boolean;
}

/** A section's exercises, one a week. */
export function planLargeExercises({ index, startsAt, isRunning }: LargeSection): LargeExercise[] {
  const { exercisesPerSection, stones, stonesPerTray } = LARGE_PROGRAM;
  return Array.from({ length: exercisesPerSection }, (_, week) => ({
    title: `Week ${week + 1}`,
    tray: (index + week) % (stones / stonesPerTray),
    opensAt: new Date(startsAt.getTime() + week * 7 * DAY_MS),
    dueAt: new Date(startsAt.getTime() + (week * 7 + 6) * DAY_MS),
    isReleased: !isRunning || week < exercisesPerSection - UNRELEASED,
  }));
}

/** How a student works in a week: their own skill, and an eye that practice has trained. */
export function getLargeSkill(login: string, week: number): StudentSkill {
  const skill = drawStudentSkill(createSeededRandom(`large/${login}`));
  return { ...skill, eye: skill.eye + PRACTICE * week };
}
