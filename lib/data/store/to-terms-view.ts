import type { z } from "zod";
import { type ExerciseTerms, resolveTerms } from "@/lib/plot/exercise-terms";
import type { Scales } from "@/lib/plot/grades";
import type { CharacteristicViewSchema } from "@/lib/plot/student-view";

/** Scales and characteristics as screens list them, defaults filled in. */
export function toTermsView(terms: ExerciseTerms): {
  scales: Scales;
  characteristics: z.infer<typeof CharacteristicViewSchema>[];
} {
  const { scales, characteristics } = resolveTerms(terms);
  return {
    scales,
    characteristics: [...characteristics.values()].map((one) => ({ ...one, like: [...one.like] })),
  };
}
