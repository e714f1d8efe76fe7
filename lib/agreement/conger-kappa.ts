import { type AgreementWeights, createAgreementWeights } from "@/lib/agreement/agreement-weights";
import { computeObservedAgreement, weighCounts } from "@/lib/agreement/observed-agreement";
import { type Quantity, toUndefined } from "@/lib/agreement/statistic";
import { groupUnitPatterns, toUnitCounts } from "@/lib/agreement/unit-patterns";

/** Each rater's own shares of the categories; raters without ratings are left out. */
function listRaterShares(ratings: readonly (readonly (number | null)[])[], categories: number): number[][] {
  return ratings.flatMap((row) => {
    const shares = new Array<number>(categories).fill(0);
    const given = row.filter((place): place is number => place !== null);
    for (const place of given) shares[place] = (shares[place] ?? 0) + 1 / given.length;
    return given.length === 0 ? [] : [shares];
  });
}

/** Weighted agreement by chance of two raters with these shares. */
function computeChance(
  first: readonly number[],
  second: readonly number[],
  weights: AgreementWeights,
): number {
  const weighed = weighCounts(second, weights);
  return first.reduce((sum, share, k) => sum + share * (weighed[k] ?? 0), 0);
}

/**
 * Conger's kappa for several raters who are told apart (Conger 1980, Psychol. Bull. 88, 322-328; weights and missing
 * ratings as in Gwet 2014, ch. 5): chance agreement is the mean over pairs of raters of what their own shares give. With
 * two raters it is Cohen's kappa. `ratings[rater][unit]`, null where missing. No closed-form interval is given.
 * Undefined with fewer than two raters, where no unit has two ratings, and where only one category was used.
 */
export function computeCongerKappa(
  ratings: readonly (readonly (number | null)[])[],
  categories: number,
  weights: AgreementWeights = createAgreementWeights("identity", categories),
): Quantity {
  const table = groupUnitPatterns(toUnitCounts(ratings, categories), categories);
  const raters = listRaterShares(ratings, categories);
  const observed = computeObservedAgreement(table, weights);
  if (raters.length < 2 || observed.pairedUnits === 0) return toUndefined("no item was rated by two raters");
  const sums = Array.from({ length: categories }, (_, k) =>
    raters.reduce((sum, own) => sum + (own[k] ?? 0), 0),
  );
  const ofAll = computeChance(sums, sums, weights);
  const ofThemselves = raters.reduce((sum, own) => sum + computeChance(own, own, weights), 0);
  const expected = (ofAll - ofThemselves) / (raters.length * (raters.length - 1));
  if (1 - expected < 1e-12)
    return toUndefined("only one grade was given, so agreement cannot be told from chance");
  return { value: (observed.agreement - expected) / (1 - expected) };
}
