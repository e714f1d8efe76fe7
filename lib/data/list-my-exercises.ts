import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toStoneCard } from "@/lib/data/store/to-stone-card";
import { whereSectionInScope } from "@/lib/data/store/where-in-scope";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import {
  type ExercisePhase,
  type MyExercise,
  MyExerciseSchema,
  type MyStoneSchema,
  type StoneState,
} from "@/lib/plot/student-view";
import { toExercisePhase } from "@/lib/plot/to-exercise-phase";
import type { Prisma } from "@/prisma/generated/client";

/** A student's own sittings of a stone, the newest attempt first. */
const mySittings = (studentId: string) =>
  ({
    where: { studentId },
    orderBy: { attempt: "desc" },
    take: 1,
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

type StoneRow = Prisma.ExerciseStoneGetPayload<{
  include: { stone: true; sittings: ReturnType<typeof mySittings> };
}>;

function toState(sitting: StoneRow["sittings"][number] | undefined, phase: ExercisePhase): StoneState {
  if (sitting?.handIn) return sitting.releases.length > 0 ? "debrief-ready" : "handed-in";
  if (phase === "closed") return "missed";
  return sitting === undefined ? "not-begun" : "on-the-bench";
}

function toMyStone(row: StoneRow, phase: ExercisePhase): typeof MyStoneSchema._output {
  const card = toStoneCard(row.stone);
  const sitting = row.sittings[0];
  const state = toState(sitting, phase);
  const total = sitting?.handIn?.results[0]?.totalHundredths;
  return {
    exerciseStoneId: row.id,
    label: card.label,
    cut: card.cut,
    weightCt: card.weightCt ?? null,
    state,
    sittingId: sitting?.id ?? null,
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

/**
 * What is set for a student, each stone with where it stands; the next due first. Points only where the debrief is
 * released. A section without exercises gives none.
 */
export async function listMyExercises(viewer: Viewer): Promise<MyExercise[]> {
  const section = whereSectionInScope(viewer, "list-my-exercises");
  const exercises = await getDatabase().exercise.findMany({
    where: { section },
    orderBy: [{ dueAt: "asc" }, { title: "asc" }],
    include: {
      section: { select: { name: true } },
      allowances: { where: { studentId: viewer.userId } },
      stones: {
        orderBy: { position: "asc" },
        include: { stone: true, sittings: mySittings(viewer.userId) },
      },
    },
  });
  const now = new Date();
  return exercises.map((exercise) => {
    const phase = toExercisePhase(exercise, now);
    return MyExerciseSchema.parse({
      exerciseId: exercise.id,
      title: exercise.title,
      notes: exercise.notes,
      sectionName: exercise.section.name,
      opensAt: exercise.opensAt.toISOString(),
      dueAt: exercise.dueAt.toISOString(),
      closesAt: exercise.closesAt?.toISOString() ?? null,
      phase,
      minutesPerStone: toOwnMinutes(exercise),
      stones: exercise.stones.map((stone) => toMyStone(stone, phase)),
    });
  });
}
