import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { whereOwnPlaces } from "@/lib/data/store/find-own-label";
import { countOwnAttemptsLeft } from "@/lib/data/store/own-attempts";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { arrangeOwnPlaces } from "@/lib/plot/arrange-own-places";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { findStoneOpening } from "@/lib/plot/find-stone-opening";
import {
  type ExercisePhase,
  type MyExercise,
  MyExerciseSchema,
  type MyStoneSchema,
  type StoneState,
} from "@/lib/plot/student-view";
import { toExercisePhase } from "@/lib/plot/to-exercise-phase";
import { toOwnDates } from "@/lib/plot/to-own-dates";
import type { Prisma } from "@/prisma/generated/client";

/** A student's own sittings of a stone, the first attempt first. */
const mySittings = (studentId: string) =>
  ({
    where: { studentId },
    orderBy: { attempt: "asc" },
    include: {
      handIn: {
        select: {
          handedInAt: true,
          results: { where: { isCurrent: true }, select: { totalHundredths: true } },
        },
      },
      releases: { where: { withdrawnAt: null }, select: { id: true } },
    },
  }) satisfies Prisma.ExerciseStone$sittingsArgs;

const myParts = (studentId: string) =>
  ({
    section: { select: { name: true } },
    allowances: { where: { studentId } },
    stones: {
      where: whereOwnPlaces(studentId),
      orderBy: { position: "asc" },
      include: {
        stone: true,
        retakes: { where: { studentId }, orderBy: { grantedAt: "asc" } },
        sittings: mySittings(studentId),
      },
    },
  }) satisfies Prisma.ExerciseInclude;

type ExerciseRow = Prisma.ExerciseGetPayload<{ include: ReturnType<typeof myParts> }>;
type StoneRow = ExerciseRow["stones"][number];

function toState(sitting: StoneRow["sittings"][number] | undefined, phase: ExercisePhase): StoneState {
  if (sitting?.handIn) return sitting.releases.length > 0 ? "debrief-ready" : "handed-in";
  if (phase === "closed") return "missed";
  return sitting === undefined ? "not-begun" : "on-the-bench";
}

interface Standing {
  readonly exercise: ExerciseRow;
  readonly phase: ExercisePhase;
  /** What the student calls the stone. */
  readonly label: string;
  readonly opensAfter: string | null;
  readonly now: Date;
}

function toMyStone(row: StoneRow, standing: Standing): typeof MyStoneSchema._output {
  const { exercise, phase, label, opensAfter, now } = standing;
  const card = toStoneCard(row.stone);
  const sitting = row.sittings.at(-1);
  const opening = findStoneOpening(row, now);
  const isTaken = (phase === "open" || phase === "late") && opening === null;
  const state = toState(sitting, phase);
  // While the stone is on the bench again, what was released of it is closed (`findSitting`).
  const before = state === "on-the-bench" ? [] : row.sittings.slice(0, -1);
  const earlier = before.findLast(({ releases }) => releases.length > 0);
  const total = sitting?.handIn?.results[0]?.totalHundredths;
  return {
    exerciseStoneId: row.id,
    label,
    cut: card.cut,
    weightCt: card.weightCt ?? null,
    state,
    sittingId: sitting?.id ?? null,
    attempt: sitting?.attempt ?? 0,
    attemptsLeft: isTaken ? countOwnAttemptsLeft(row, exercise) : 0,
    isRetake: row.isRetake,
    opensAfter: state === "not-begun" ? opensAfter : null,
    opensAt: state === "not-begun" ? (opening?.toISOString() ?? null) : null,
    earlierDebriefId: earlier?.id ?? null,
    markCount: sitting?.markCount ?? 0,
    handedInAt: sitting?.handIn?.handedInAt.toISOString() ?? null,
    endsAt: state === "on-the-bench" ? (sitting?.endsAt?.toISOString() ?? null) : null,
    total: state === "debrief-ready" && total !== undefined ? total / 100 : null,
  };
}

/** The student's own time for each stone, extra time included. */
function toOwnMinutes(exercise: { rules: unknown; allowances: readonly { extraMinutes: number }[] }) {
  const { minutesPerStone } = parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules");
  return minutesPerStone === null ? null : minutesPerStone + (exercise.allowances[0]?.extraMinutes ?? 0);
}

/** A student's stones of an exercise, in their order and by the names that they know. */
function toMyStones(exercise: ExerciseRow, phase: ExercisePhase, studentId: string, now: Date) {
  const rules = parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules");
  const arranged = arrangeOwnPlaces(exercise.stones, rules.areLabelsHidden, studentId);
  return arranged.map(({ place, label }, index) => {
    const before = arranged[index - 1];
    const isWaiting =
      rules.isInOrder && !place.isRetake && before?.place.sittings.some(({ handIn }) => handIn) === false;
    const opensAfter = isWaiting ? (before?.label ?? null) : null;
    return toMyStone(place, { exercise, phase, label, opensAfter, now });
  });
}

/**
 * What is set for a student, each stone with where it stands; the next due first. Points only where the debrief is
 * released. A section without exercises gives none.
 */
export async function listMyExercises(viewer: Viewer): Promise<MyExercise[]> {
  const section = whereSectionInScope(viewer, "list-my-exercises");
  const exercises = await getDatabase().exercise.findMany({
    where: { section },
    orderBy: [{ dueAt: "asc" }, { title: "asc" }],
    include: myParts(viewer.userId),
  });
  const now = new Date();
  return exercises.map((exercise) => {
    const dates = toOwnDates(exercise, exercise.allowances[0]);
    const phase = toExercisePhase(dates, now);
    return MyExerciseSchema.parse({
      exerciseId: exercise.id,
      title: exercise.title,
      notes: exercise.notes,
      sectionName: exercise.section.name,
      opensAt: exercise.opensAt.toISOString(),
      dueAt: dates.dueAt.toISOString(),
      closesAt: dates.closesAt?.toISOString() ?? null,
      debriefsAt: exercise.debriefsAt?.toISOString() ?? null,
      phase,
      minutesPerStone: toOwnMinutes(exercise),
      stones: toMyStones(exercise, phase, viewer.userId, now),
    });
  });
}
