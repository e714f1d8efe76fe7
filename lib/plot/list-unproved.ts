import type { Characteristic } from "@/lib/plot/characteristic";
import type { ExerciseRules } from "@/lib/plot/exercise-rules";
import type { PlottedMark } from "@/lib/plot/mark";

/**
 * The ids of marks that an exercise asks a proof of and that have none, in the order given. A characteristic that is
 * not known counts as inside: it cannot be said to lie at the surface.
 */
export function listUnproved(
  marks: readonly PlottedMark[],
  { proofs }: Pick<ExerciseRules, "proofs">,
  characteristics: ReadonlyMap<string, Pick<Characteristic, "class">>,
): string[] {
  const isAsked = ({ shape, characteristic }: PlottedMark) => {
    if (proofs === "dots") return shape.kind === "dot";
    return proofs === "inside" && characteristics.get(characteristic)?.class !== "surface";
  };
  return marks.filter((mark) => isAsked(mark) && (mark.proofs ?? []).length === 0).map(({ id }) => id);
}
