import { getDatabase, runInTransaction } from "@/lib/data/store/database";
import { findHandIn, type HandInToScore, isScoringDue } from "@/lib/data/store/find-hand-in";
import { getRubric } from "@/lib/data/store/get-rubric";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { ExerciseTermsSchema, resolveTerms } from "@/lib/plot/exercise-terms";
import { PlotSchema } from "@/lib/plot/plots-file";
import { ScoreDetailSchema, type ScoredPlot, ScoreResultSchema } from "@/lib/plot/score-result";
import { type Reference, ReferenceSchema, type StoneBody, StoneBodySchema } from "@/lib/plot/stone";
import { type PreparedReference, prepareReference, scorePlot } from "@/lib/scoring/score-plot";

interface Ground {
  readonly stone: StoneBody;
  readonly reference: Reference;
}

/** Parsed stones with their references: the engine remembers what it measures with the object that it was given. */
const grounds = new Map<string, Ground>();
const MOST_GROUNDS = 300;

type StoneRow = HandInToScore["sitting"]["exerciseStone"]["stone"];

/** A stone's body and latest reference, null where it has none; the same objects for the same revision and version. */
function findGround(stone: StoneRow): Ground | null {
  const latest = stone.references[0];
  if (latest === undefined) return null;
  const key = `${stone.id} ${stone.revision} ${latest.id}`;
  const known = grounds.get(key);
  if (known !== undefined) return known;
  const ground = {
    stone: parseColumn(StoneBodySchema, stone.body, "Stone.body"),
    reference: parseColumn(ReferenceSchema, latest.body, "Reference.body"),
  };
  if (grounds.size >= MOST_GROUNDS) grounds.clear();
  grounds.set(key, ground);
  return ground;
}

/** Scores a hand-in by the latest reference and rubric; null where the stone has no reference yet. */
function score(handIn: HandInToScore): ScoredPlot | null {
  const { exerciseStone, student } = handIn.sitting;
  const { exercise } = exerciseStone;
  const ground = findGround(exerciseStone.stone);
  if (ground === null) return null;
  const terms = resolveTerms(parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms"));
  const tray = exercise.stones.flatMap(({ stone }): PreparedReference[] => {
    const other = findGround(stone);
    return other === null
      ? []
      : [prepareReference({ stoneId: stone.label, ...other, characteristics: terms.characteristics })];
  });
  return scorePlot({
    stoneId: exerciseStone.stone.label,
    by: student.login,
    ...ground,
    plot: parseColumn(PlotSchema, handIn.plot, "HandIn.plot"),
    rubric: getRubric(exercise.rubrics).rubric,
    ...terms,
    tray,
  });
}

/**
 * Scores one hand-in and keeps the result with the reference, rubric and engine that it was scored by. Called by the
 * program itself, after a hand-in was answered and by the sweep; nothing is done where the result is up to date, where
 * the debrief is released, or where the stone has no reference yet. Gives whether a result was written.
 */
export async function scoreHandIn(handInId: string): Promise<boolean> {
  const handIn = await findHandIn(getDatabase(), handInId);
  if (handIn === null || !isScoringDue(handIn)) return false;
  const { stone, exercise } = handIn.sitting.exerciseStone;
  const reference = stone.references[0];
  const scored = score(handIn);
  if (scored === null || reference === undefined) return false;
  return runInTransaction(async (transaction) => {
    const still = await findHandIn(transaction, handInId);
    if (still === null || !isScoringDue(still)) return false;
    await transaction.result.updateMany({ where: { handInId, isCurrent: true }, data: { isCurrent: false } });
    await transaction.result.create({
      data: {
        handInId,
        referenceId: reference.id,
        rubricVersionId: getRubric(exercise.rubrics).row.id,
        engineVersion: scored.detail.engineVersion,
        stoneRevision: stone.revision,
        totalHundredths: Math.round(scored.result.total * 100),
        result: toColumn(ScoreResultSchema, scored.result),
        detail: toColumn(ScoreDetailSchema, scored.detail),
      },
    });
    return true;
  });
}
