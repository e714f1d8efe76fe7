import type { OlderResults } from "@/lib/plot/rescore-view";

/** How many results are older than what is in force, as a sentence; null where none is. */
export function toOlderWords({ results, byReference, byBody, byRubric }: OlderResults): string | null {
  if (results === 0) return null;
  const by = [
    byRubric > 0 ? "rubric" : null,
    byReference > 0 ? "reference" : null,
    byBody > 0 ? "version of the stone" : null,
  ].filter((one) => one !== null);
  const count = results === 1 ? "1 result was" : `${results} results were`;
  return `${count} scored by an older ${by.join(" or ")}.`;
}
