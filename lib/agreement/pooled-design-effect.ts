import type { ClusterCount } from "@/lib/agreement/clustered-share";

/**
 * How much wider than of independent trials the spread of groups' shares is because trials come in clusters that are alike
 * within (marks of one student): the linearised variance of each group's share over its clusters (Cochran, Sampling
 * Techniques, 3rd ed. 1977, section 6.3; the design effect is Kish's, Survey Sampling 1965; both from memory), pooled over
 * the groups against their binomial variance. What differs between groups does not enter it. Never below 1; 1 where no group
 * has two clusters, or nothing varies.
 */
export function computePooledDesignEffect(groups: readonly (readonly ClusterCount[])[]): number {
  let clustered = 0;
  let simple = 0;
  for (const group of groups) {
    const used = group.filter(({ trials }) => trials > 0);
    if (used.length < 2) continue;
    const trials = used.reduce((sum, one) => sum + one.trials, 0);
    const share = used.reduce((sum, one) => sum + one.hits, 0) / trials;
    const squares = used.reduce((sum, one) => sum + (one.hits - share * one.trials) ** 2, 0);
    clustered += (used.length / (used.length - 1)) * squares;
    simple += trials * share * (1 - share);
  }
  return simple === 0 ? 1 : Math.max(1, clustered / simple);
}
