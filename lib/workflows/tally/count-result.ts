import { countPlot } from "@/lib/agreement/count-plot";
import type { Counts } from "@/lib/agreement/counts";
import type { ResultToCount } from "@/lib/data/store/list-results-to-count";
import { parseColumn } from "@/lib/data/store/parse-column";
import { ExerciseTermsSchema, resolveTerms } from "@/lib/plot/exercise-terms";
import type { Scales } from "@/lib/plot/grades";
import { PlotSchema } from "@/lib/plot/plots-file";
import type { MarkOutcome } from "@/lib/plot/result-tally";
import { ScoreResultSchema } from "@/lib/plot/score-result";
import { type Reference, ReferenceSchema } from "@/lib/plot/stone";

export interface CountedResult {
  readonly counts: Counts;
  readonly outcome: MarkOutcome;
  /** Steps from the reference's clarity to the plot's, positive is harsher; null where either is missing. */
  readonly clarityGap: number | null;
}

/** Reads the references and scales of many results, each once. */
export class CountingGround {
  readonly #references = new Map<string, Reference>();
  readonly #scales = new Map<string, Scales>();

  getReference({ id, body }: ResultToCount["reference"]): Reference {
    const known = this.#references.get(id) ?? parseColumn(ReferenceSchema, body, "Reference.body");
    this.#references.set(id, known);
    return known;
  }

  getScales({ exerciseId, exercise }: ResultToCount["handIn"]["sitting"]["exerciseStone"]): Scales {
    const known =
      this.#scales.get(exerciseId) ??
      resolveTerms(parseColumn(ExerciseTermsSchema, exercise.terms, "Exercise.terms")).scales;
    this.#scales.set(exerciseId, known);
    return known;
  }
}

/** Counts a result by `countPlot`, the one way of counting. */
export function countResult(ground: CountingGround, row: ResultToCount): CountedResult {
  const result = parseColumn(ScoreResultSchema, row.result, "Result.result");
  const counts = countPlot({
    reference: ground.getReference(row.reference),
    plotted: parseColumn(PlotSchema, row.handIn.plot, "HandIn.plot"),
    result,
    scales: ground.getScales(row.handIn.sitting.exerciseStone),
  });
  return {
    counts,
    outcome: { found: result.found.map(({ reference }) => reference), overlooked: result.overlooked },
    clarityGap: counts.grades.clarity?.steps ?? null,
  };
}
