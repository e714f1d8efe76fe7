/** What the plots of an exercise are scored by, read once and kept while many are scored. */
import { parseColumn } from "@/lib/data/store/parse-column";
import { toColumn } from "@/lib/data/store/to-column";
import { ExerciseTermsSchema, resolveTerms } from "@/lib/plot/exercise-terms";
import type { Overrule } from "@/lib/plot/overrule";
import { PlotSchema } from "@/lib/plot/plots-file";
import { type Rubric, RubricSchema } from "@/lib/plot/rubric";
import { ScoreDetailSchema, type ScoredPlot, ScoreResultSchema } from "@/lib/plot/score-result";
import { type Reference, ReferenceSchema, type StoneBody, StoneBodySchema } from "@/lib/plot/stone";
import { type PreparedReference, prepareReference, scorePlot } from "@/lib/scoring/score-plot";

type Terms = ReturnType<typeof resolveTerms>;

/** A stone of the exercise that has a reference. */
interface Place {
  readonly label: string;
  readonly stone: StoneBody;
  readonly reference: Reference;
  readonly referenceId: string;
  readonly stoneRevision: number;
}

export interface ScoringGround {
  readonly rubric: Rubric;
  readonly rubricVersionId: string;
  readonly terms: Terms;
  /** By the exercise's own id of the stone. */
  readonly places: ReadonlyMap<string, Place>;
  readonly tray: readonly PreparedReference[];
}

/** The rows of an exercise that scoring needs, rubrics and references with the latest first. */
export interface ExerciseToScore {
  readonly terms: unknown;
  readonly rubrics: readonly { readonly id: string; readonly body: unknown }[];
  readonly stones: readonly {
    readonly id: string;
    readonly stone: {
      readonly id: string;
      readonly label: string;
      readonly revision: number;
      readonly body: unknown;
      readonly references: readonly { readonly id: string; readonly body: unknown }[];
    };
  }[];
}

/** At most so many are remembered of each; beyond, all are forgotten. */
const MOST_KEPT = 300;

/** The engine remembers what it measures with the objects that it was given, so the same columns give the same objects. */
function remember<T>(kept: Map<string, T>, key: string, make: () => T): T {
  const known = kept.get(key);
  if (known !== undefined) return known;
  if (kept.size >= MOST_KEPT) kept.clear();
  const made = make();
  kept.set(key, made);
  return made;
}

const keptTerms = new Map<string, Terms>();
const keptBodies = new Map<string, { readonly stone: StoneBody; readonly reference: Reference }>();

/** Reads what an exercise is scored by. */
export function readScoringGround(exercise: ExerciseToScore): ScoringGround {
  const [rubric] = exercise.rubrics;
  if (rubric === undefined) throw new Error("an exercise without a rubric");
  const terms = remember(keptTerms, JSON.stringify(exercise.terms), () =>
    resolveTerms(parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms")),
  );
  const places = new Map<string, Place>();
  for (const { id, stone } of exercise.stones) {
    const [latest] = stone.references;
    if (latest === undefined) continue;
    const bodies = remember(keptBodies, `${stone.id} ${stone.revision} ${latest.id}`, () => ({
      stone: parseColumn(StoneBodySchema, stone.body, "Stone.body"),
      reference: parseColumn(ReferenceSchema, latest.body, "Reference.body"),
    }));
    places.set(id, {
      label: stone.label,
      ...bodies,
      referenceId: latest.id,
      stoneRevision: stone.revision,
    });
  }
  const tray = [...places.values()].map(({ label, stone, reference }) =>
    prepareReference({ stoneId: label, stone, reference, characteristics: terms.characteristics }),
  );
  return {
    rubric: parseColumn(RubricSchema, rubric.body, "RubricVersion.body"),
    rubricVersionId: rubric.id,
    terms,
    places,
    tray,
  };
}

/** Scores a handed-in plot; null where its stone has no reference yet. */
export function scoreOnGround(
  { rubric, terms, places, tray }: ScoringGround,
  exerciseStoneId: string,
  handIn: { readonly plot: unknown; readonly login: string; readonly overrules: readonly Overrule[] },
): ScoredPlot | null {
  const place = places.get(exerciseStoneId);
  if (place === undefined) return null;
  return scorePlot({
    stoneId: place.label,
    by: handIn.login,
    stone: place.stone,
    reference: place.reference,
    plot: parseColumn(PlotSchema, handIn.plot, "HandIn.plot"),
    rubric,
    ...terms,
    tray,
    overrules: handIn.overrules,
  });
}

/** A result with the reference, rubric and engine that it was scored by, as its row keeps it. */
export function toResultColumns(
  ground: ScoringGround,
  exerciseStoneId: string,
  scored: ScoredPlot,
  /** The review revision whose overrules are in it. */
  reviewRevision: number,
) {
  const place = ground.places.get(exerciseStoneId);
  if (place === undefined) throw new Error("a result on a stone without a reference");
  return {
    referenceId: place.referenceId,
    rubricVersionId: ground.rubricVersionId,
    engineVersion: scored.detail.engineVersion,
    stoneRevision: place.stoneRevision,
    reviewRevision,
    totalHundredths: Math.round(scored.result.total * 100),
    result: toColumn(ScoreResultSchema, scored.result),
    detail: toColumn(ScoreDetailSchema, scored.detail),
  };
}
