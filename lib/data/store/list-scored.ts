import type { Transaction } from "@/lib/data/store/database";
import type { ExerciseWithParts } from "@/lib/data/store/find-exercise";
import type { RescoreGround } from "@/lib/plot/rescore";
import type { OlderResults } from "@/lib/plot/rescore-view";

/** What an exercise is scored by now. */
export interface GroundNow {
  readonly rubricVersionId: string;
  readonly stones: RescoreGround;
}

/** The rubric in force, and the latest reference and body of each stone that has a reference; in the stones' order. */
export function toGroundNow(exercise: Pick<ExerciseWithParts, "rubrics" | "stones">): GroundNow {
  const [rubric] = exercise.rubrics;
  if (rubric === undefined) throw new Error("an exercise without a rubric");
  return {
    rubricVersionId: rubric.id,
    stones: exercise.stones.flatMap(({ id, stone }) => {
      const [reference] = stone.references;
      return reference === undefined
        ? []
        : [{ exerciseStoneId: id, referenceId: reference.id, stoneRevision: stone.revision }];
    }),
  };
}

export interface ScoredHandIn {
  readonly handInId: string;
  readonly exerciseStoneId: string;
  readonly released: boolean;
  readonly totalHundredths: number;
  readonly olderReference: boolean;
  readonly olderBody: boolean;
  readonly olderRubric: boolean;
}

/** Every hand-in of an exercise that has a current result, with what that result is older than; the oldest hand-in first. */
export async function listScored(
  database: Transaction,
  exerciseId: string,
  ground: GroundNow,
): Promise<ScoredHandIn[]> {
  const rows = await database.result.findMany({
    where: { isCurrent: true, handIn: { sitting: { exerciseStone: { exerciseId } } } },
    orderBy: [{ handIn: { handedInAt: "asc" } }, { handInId: "asc" }],
    select: {
      handInId: true,
      referenceId: true,
      rubricVersionId: true,
      stoneRevision: true,
      totalHundredths: true,
      handIn: {
        select: {
          sitting: {
            select: {
              exerciseStoneId: true,
              releases: { where: { withdrawnAt: null }, select: { id: true } },
            },
          },
        },
      },
    },
  });
  const places = new Map(ground.stones.map((one) => [one.exerciseStoneId, one]));
  return rows.map(({ handInId, totalHundredths, handIn: { sitting }, ...by }) => {
    const place = places.get(sitting.exerciseStoneId);
    return {
      handInId,
      exerciseStoneId: sitting.exerciseStoneId,
      released: sitting.releases.length > 0,
      totalHundredths,
      olderReference: place !== undefined && by.referenceId !== place.referenceId,
      olderBody: place !== undefined && by.stoneRevision !== place.stoneRevision,
      olderRubric: by.rubricVersionId !== ground.rubricVersionId,
    };
  });
}

/** Whether a result is by an older reference, body or rubric than the ground that it was listed with. */
export function isOlder(one: ScoredHandIn): boolean {
  return one.olderReference || one.olderBody || one.olderRubric;
}

/** Counts the older ones of a list. */
export function countOlder(scored: readonly ScoredHandIn[]): OlderResults {
  const older = scored.filter(isOlder);
  return {
    results: older.length,
    byReference: older.filter(({ olderReference }) => olderReference).length,
    byBody: older.filter(({ olderBody }) => olderBody).length,
    byRubric: older.filter(({ olderRubric }) => olderRubric).length,
    released: older.filter(({ released }) => released).length,
  };
}
