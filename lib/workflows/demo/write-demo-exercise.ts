import type { Transaction } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import { DEMO_SCHOOL_RULES, type DemoExercise } from "@/lib/demo/demo-exercises";
import { ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { ExerciseTermsSchema } from "@/lib/plot/exercise-terms";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import { RubricSchema } from "@/lib/plot/rubric";
import type { DemoActor, DemoTrail } from "@/lib/workflows/demo/demo-trail";
import type { DemoTray } from "@/lib/workflows/demo/write-demo-tray";

const HOUR_MS = 3_600_000;
/** An exercise is set this long before it opens, hours. */
const SET_BEFORE_H = 30;

export interface ExercisePlan {
  readonly exercise: DemoExercise;
  readonly resolved: ResolvedSet;
  readonly tray: DemoTray;
  readonly sectionId: string;
  readonly author: DemoActor;
  readonly now: Date;
}

export interface WrittenExercise {
  readonly exerciseId: string;
  readonly rubricVersionId: string;
  /** By the stone's label. */
  readonly places: ReadonlyMap<string, { readonly exerciseStoneId: string; readonly referenceId: string }>;
}

/** An exercise on all stones of a tray, with the first version of its rubric. */
export async function writeDemoExercise(
  transaction: Transaction,
  trail: DemoTrail,
  plan: ExercisePlan,
): Promise<WrittenExercise> {
  const { exercise, resolved, tray, author, now } = plan;
  const at = (hours: number) => new Date(now.getTime() + hours * HOUR_MS);
  const createdAt = at(exercise.opensH - SET_BEFORE_H);
  const { set, rubric } = resolved;
  const { preparation, beyond } = exercise;
  const row = await transaction.exercise.create({
    data: {
      sectionId: plan.sectionId,
      title: exercise.title,
      notes: exercise.notes,
      opensAt: at(exercise.opensH),
      dueAt: at(exercise.dueH),
      closesAt: at(exercise.closesH),
      debriefsAt: beyond === undefined ? null : at(beyond.debriefsH),
      rules: toColumn(ExerciseRulesSchema, {
        preparation,
        schoolRules: DEMO_SCHOOL_RULES,
        ...beyond?.rules,
      }),
      terms: toColumn(ExerciseTermsSchema, {
        scales: set.scales ?? {},
        characteristics: set.characteristics ?? [],
      }),
      authorId: author.userId,
      createdAt,
      stones: {
        create: tray.stones.map(({ stoneId, label }, index) => {
          const opensH = beyond?.openings[label];
          return { stoneId, position: index + 1, opensAt: opensH === undefined ? null : at(opensH) };
        }),
      },
      rubrics: {
        create: { version: 1, body: toColumn(RubricSchema, rubric), authorId: author.userId, createdAt },
      },
    },
    include: { stones: true, rubrics: true },
  });
  trail.add(createdAt, author, {
    action: "create-exercise",
    subjectKind: "exercise",
    subjectId: row.id,
    detail: exercise.title,
  });
  const places = new Map(
    row.stones.flatMap(({ id, stoneId }) => {
      const stone = tray.stones.find((one) => one.stoneId === stoneId);
      return stone === undefined
        ? []
        : [[stone.label, { exerciseStoneId: id, referenceId: stone.referenceId }] as const];
    }),
  );
  const rubricVersionId = row.rubrics[0]?.id;
  if (rubricVersionId === undefined) throw new Error("an exercise without a rubric");
  return { exerciseId: row.id, rubricVersionId, places };
}
