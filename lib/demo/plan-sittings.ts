/** When the demo's students sat at the bench, and what they did there. Pure: dates are told from a given moment. */
import { createSeededRandom } from "@/lib/base/seeded-random";
import { DEMO_RETAKES, type DemoExercise } from "@/lib/demo/demo-exercises";
import { getDemoSkill } from "@/lib/demo/demo-skills";
import { type SimulatedStone, simulateSitting } from "@/lib/demo/simulate-sitting";
import type { StudentSkill } from "@/lib/demo/student-skill";
import { rebuildSitting, type SittingEvent, type SittingState } from "@/lib/plot/sitting-event";

export interface PlannedSitting {
  readonly login: string;
  /** The stone's id in its set. */
  readonly stone: string;
  readonly openedAt: Date;
  readonly events: readonly SittingEvent[];
  /** From 1; a retake is a further one. */
  readonly attempt: number;
  /** What the events add up to. */
  readonly state: SittingState;
  /** Null while it is on the bench. */
  readonly handedInAt: Date | null;
}

const HOUR_MS = 3_600_000;
/** Hand-ins begin this long after the exercise opened and all end before it is due (shares of that time). */
const EARLIEST = 0.05;
const LATEST = 0.9;
/** Between two stones, ms. */
const BREAK_MS = 4 * 60_000;
/** A sitting on the bench was opened this long ago, ms, and is this far on. */
const ON_BENCH_AGO_MS = 50 * 60_000;
const ON_BENCH_SHARE = 0.6;
/** A retake that was sat was opened this long ago, ms. */
const RETAKE_AGO_MS = 90 * 60_000;

function getProgress({ progress }: DemoExercise, login: string, stones: number): string {
  if (progress === null) return "n".repeat(stones);
  return progress === "all-handed-in" ? "i".repeat(stones) : (progress[login] ?? "n".repeat(stones));
}

/** Someone's first stone is opened at a time of their own: within the days that the exercise was open, before now. */
function drawStart(exercise: DemoExercise, login: string, now: Date): number {
  const random = createSeededRandom(`${exercise.set}/${login}/start`);
  const opens = now.getTime() + exercise.opensH * HOUR_MS;
  const ends = now.getTime() + Math.min(exercise.dueH, -2) * HOUR_MS;
  return opens + (ends - opens) * (EARLIEST + (LATEST - EARLIEST) * random.next());
}

/** The stone that was really under the loupe when this one was asked for. */
function findInHand(
  { swapped }: DemoExercise,
  login: string,
  asked: SimulatedStone,
  stones: readonly SimulatedStone[],
): SimulatedStone {
  if (swapped?.login !== login) return asked;
  const place = swapped.stones.indexOf(asked.stone.id);
  const other = place < 0 ? undefined : swapped.stones[1 - place];
  return stones.find(({ stone }) => stone.id === other) ?? asked;
}

function planStudent(
  exercise: DemoExercise,
  login: string,
  stones: readonly SimulatedStone[],
  now: Date,
  getSkill: (login: string) => StudentSkill,
) {
  const skill = getSkill(login);
  const progress = getProgress(exercise, login, stones.length);
  let clockMs = Math.round(drawStart(exercise, login, now));
  return stones.flatMap((simulated, index): PlannedSitting[] => {
    const state = progress[index];
    if (state !== "i" && state !== "b") return [];
    const stone = simulated.stone.id;
    const inHand = findInHand(exercise, login, simulated, stones);
    const { events, handedInAtMs } = simulateSitting(inHand, skill, `${exercise.set}/${login}/${stone}`);
    if (state === "b") {
      const done = events.filter(({ atMs }) => atMs <= ON_BENCH_SHARE * handedInAtMs);
      const openedAt = new Date(now.getTime() - ON_BENCH_AGO_MS);
      const sofar = rebuildSitting(done);
      return [{ login, stone, attempt: 1, openedAt, events: done, state: sofar, handedInAt: null }];
    }
    const openedAt = new Date(clockMs);
    const handedInAt = new Date(clockMs + handedInAtMs);
    clockMs += handedInAtMs + BREAK_MS;
    return [{ login, stone, attempt: 1, openedAt, events, state: rebuildSitting(events), handedInAt }];
  });
}

/** The retakes of an exercise that were sat, each as its student's second attempt. */
export function planRetakes(
  exercise: DemoExercise,
  stones: readonly SimulatedStone[],
  now: Date,
): PlannedSitting[] {
  return (DEMO_RETAKES[exercise.set] ?? []).flatMap(({ login, stone, isSat }): PlannedSitting[] => {
    const simulated = stones.find((one) => one.stone.id === stone);
    if (!isSat || simulated === undefined) return [];
    const seed = `${exercise.set}/${login}/${stone}/retake`;
    const { events, handedInAtMs } = simulateSitting(simulated, getDemoSkill(login), seed);
    const openedAt = new Date(now.getTime() - RETAKE_AGO_MS);
    const handedInAt = new Date(openedAt.getTime() + handedInAtMs);
    return [{ login, stone, attempt: 2, openedAt, events, state: rebuildSitting(events), handedInAt }];
  });
}

/** All sittings of an exercise, students first, stones in the order of the set. */
export function planSittings(
  exercise: DemoExercise,
  logins: readonly string[],
  stones: readonly SimulatedStone[],
  now: Date,
  getSkill: (login: string) => StudentSkill = getDemoSkill,
): PlannedSitting[] {
  return logins.flatMap((login) => planStudent(exercise, login, stones, now, getSkill));
}
