/**
 * Last term's tray of the demo: three worn stones whose references do not tell all that there is. One lacks a feature, one was
 * damaged half-way through the exercise, one misleads at a place that is no decoy yet. Invented; pure; the same every time.
 */
import { createSeededRandom } from "@/lib/base/seeded-random";
import type { DemoExercise } from "@/lib/demo/demo-exercises";
import { varyStone } from "@/lib/demo/large-program";
import { drawStudentSkill, type StudentSkill } from "@/lib/demo/student-skill";
import type { ExerciseSet } from "@/lib/plot/exercise-set";
import type { ReferenceMark } from "@/lib/plot/mark";
import type { Stone } from "@/lib/plot/stone";

const DAY = 24;

/** What the blow left at the girdle of the second stone. */
const CHIP: ReferenceMark = {
  id: "fresh-chip",
  view: "crown",
  characteristic: "chip",
  shape: {
    kind: "outline",
    points: [
      [0.2914, -0.3912],
      [0.3311, -0.3585],
      [0.3187, -0.3358],
      [0.2846, -0.3601],
    ],
  },
  weight: 2,
};

export interface WornStones {
  /** As the references have it. */
  readonly set: ExerciseSet;
  /** As the stones were under the loupe: in the first half of the exercise, and after the blow. */
  readonly early: readonly Stone[];
  readonly late: readonly Stone[];
}

/** The three stones from those of the demo's first set, which gives. Throws RangeError without them. */
export function planWornStones(sources: readonly Stone[]): WornStones {
  const take = (id: string, label: string): Stone => {
    const stone = sources.find((one) => one.id === id);
    if (stone === undefined) throw new RangeError(`planWornStones: no stone ${id}`);
    return { ...varyStone(stone, 1), id: label };
  };
  const [first, second, third] = [take("A-03", "D-01"), take("A-04", "D-02"), take("A-02", "D-03")];
  const damaged = { ...second, marks: [...second.marks, CHIP] };
  return {
    set: {
      format: "loupework/exercise-set",
      version: 1,
      title: "Worn stones",
      notes: "Stones that have been through many tweezers. Look at the girdle.",
      stones: [
        { ...first, marks: first.marks.filter(({ id }) => id !== "crystal") },
        second,
        { ...third, decoys: [] },
      ],
    },
    early: [first, second, third],
    late: [first, damaged, third],
  };
}

/** The exercise of last term, and who of its students sat when: those of the second half after the blow. */
export const WORN_EXERCISE: DemoExercise = {
  set: "first-look",
  title: "Worn stones",
  notes: "Three stones that many have held before you.",
  opensH: -160 * DAY,
  dueH: -146 * DAY,
  closesH: -144 * DAY,
  preparation: "asked",
  isReleased: true,
  progress: "all-handed-in",
};

/** How a student of last term works: any beginner, more easily taken in than most. */
export function getPastSkill(login: string): StudentSkill {
  const skill = drawStudentSkill(createSeededRandom(`past/${login}`));
  return { ...skill, eye: Math.max(1.6, skill.eye), gullible: 0.6, scatter: Math.min(0.014, skill.scatter) };
}

/** A colleague who reads a stone a second time: a trained eye, no strays, and not always the same name. */
export function getReaderSkill(login: string): StudentSkill {
  return {
    ...getPastSkill(login),
    scatter: 0.006,
    sizeScatter: 0.15,
    eye: 2.6,
    pavilionCare: 0,
    naming: 0.9,
    doubling: 0,
    otherView: 0,
    fragments: 0,
    merging: 0,
    wiping: 1,
    echoesPerFeature: 0,
    glintsPerPlot: 0,
    imaginedPerPlot: 0.3,
    gullible: 0,
    turning: 0,
    halfFacetOff: 0,
    mirroring: 0,
    gradeBias: 0,
    gradeScatter: 0.5,
  };
}
