import type { ReadingWithParts } from "@/lib/data/store/find-reading";
import { parseColumn } from "@/lib/data/store/parse-column";
import { resolveTerms, TrayTermsSchema } from "@/lib/plot/exercise-terms";
import { resolveRubric } from "@/lib/plot/rubric";
import { StoneBodySchema } from "@/lib/plot/stone";
import type { ReadingGround } from "@/lib/workflows/reading/compare-readings";

/** What a stone's readings are compared on: its body, and the terms and rubric of its tray. */
export function readReadingGround({ body, tray }: ReadingWithParts["stone"]): ReadingGround {
  const terms = parseColumn(TrayTermsSchema, tray.terms, "Tray.terms");
  return {
    stone: parseColumn(StoneBodySchema, body, "Stone.body"),
    terms: resolveTerms(terms),
    rubric: resolveRubric(terms.rubric),
  };
}
