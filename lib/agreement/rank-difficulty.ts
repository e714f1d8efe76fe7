import type { RaschItem } from "@/lib/agreement/fit-rasch";
import { type Estimate, isDefined, NORMAL_975, toUndefined } from "@/lib/agreement/statistic";

/** How hard a stone is: from its reference marks' places on the Rasch scale. */
export interface StoneDifficulty {
  readonly stoneId: string;
  /** Mean difficulty of its marks that have a place, logits; high is hard. */
  readonly difficulty: Estimate;
  readonly marks: number;
  /** Marks beyond range: found by everyone, and by nobody. They are not in the mean. */
  readonly foundByAll: number;
  readonly foundByNobody: number;
}

const countBeyond = (items: readonly RaschItem[], side: "above" | "below") =>
  items.filter(({ easiness }) => "beyond" in easiness && easiness.beyond === side).length;

function averageDifficulty(items: readonly RaschItem[]): Estimate {
  const placed = items.flatMap(({ easiness }) => (isDefined(easiness) ? [easiness] : []));
  if (placed.length === 0) {
    if (items.length > 0 && countBeyond(items, "above") === items.length) {
      return toUndefined("beyond range: everyone found all of its marks");
    }
    if (items.length > 0 && countBeyond(items, "below") === items.length) {
      return toUndefined("beyond range: nobody found any of its marks");
    }
    return toUndefined("none of its marks can be compared with other stones' yet");
  }
  const value = -placed.reduce((sum, place) => sum + place.value, 0) / placed.length;
  const standardError =
    Math.sqrt(placed.reduce((sum, place) => sum + place.standardError ** 2, 0)) / placed.length;
  const half = NORMAL_975 * standardError;
  return { value, standardError, low: value - half, high: value + half };
}

/**
 * Stones by difficulty, the hardest first, those without a place last. `stoneOf` names each item's stone. The standard
 * error takes the marks' errors as independent; they are slightly negatively correlated (easiness sums to 0), so it is a
 * little too large. This project's own summary of `fitRasch`. No item: no stone.
 */
export function rankDifficulty(
  items: readonly RaschItem[],
  stoneOf: (item: string) => string,
): StoneDifficulty[] {
  const byStone = new Map<string, RaschItem[]>();
  for (const item of items) {
    const stoneId = stoneOf(item.item);
    byStone.set(stoneId, [...(byStone.get(stoneId) ?? []), item]);
  }
  return [...byStone]
    .map(([stoneId, own]) => ({
      stoneId,
      difficulty: averageDifficulty(own),
      marks: own.length,
      foundByAll: countBeyond(own, "above"),
      foundByNobody: countBeyond(own, "below"),
    }))
    .sort((a, b) => {
      const [first, second] = [a.difficulty, b.difficulty];
      if (isDefined(first) && isDefined(second)) return second.value - first.value;
      return Number(isDefined(second)) - Number(isDefined(first));
    });
}
