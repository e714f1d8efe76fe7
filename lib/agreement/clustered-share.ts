import { computeT975 } from "@/lib/agreement/f-quantile";
import { NORMAL_975, type Statistic, toUndefined } from "@/lib/agreement/statistic";
import { computeWilsonInterval } from "@/lib/agreement/wilson-interval";

/** Hits and trials of one cluster: what one student found of the reference marks set. */
export interface ClusterCount {
  readonly hits: number;
  readonly trials: number;
}

/**
 * A share whose trials come in clusters that are alike within: the ratio of all hits to all trials, with Wilson's
 * interval at the effective number of trials. The design effect is that of the ratio estimator's linearised variance
 * (Cochran, Sampling Techniques, 3rd ed. 1977, section 6.3), never taken below 1; the number of trials is divided by it
 * and shrunk for the few clusters by (z / t)^2 (Korn and Graubard 1998, Surv. Methodol. 24, 193-201). Both from memory.
 * Clusters without trials are left out. No trial: undefined, with `reason`; one cluster: undefined, since its spread
 * cannot be told. Where no cluster differs from another the design effect is 1.
 */
export function computeClusteredShare(
  clusters: readonly ClusterCount[],
  reason = "nothing to count",
): Statistic {
  const used = clusters.filter(({ trials }) => trials > 0);
  const trials = used.reduce((sum, cluster) => sum + cluster.trials, 0);
  if (trials === 0) return toUndefined(reason);
  if (used.length < 2) return toUndefined("all of it comes from one source, so its spread cannot be told");
  const share = used.reduce((sum, cluster) => sum + cluster.hits, 0) / trials;
  const squares = used.reduce((sum, cluster) => sum + (cluster.hits - share * cluster.trials) ** 2, 0);
  const variance = ((used.length / (used.length - 1)) * squares) / trials ** 2;
  const simple = (share * (1 - share)) / trials;
  const designEffect = simple === 0 ? 1 : Math.max(1, variance / simple);
  const effective = (trials / designEffect) * (NORMAL_975 / computeT975(used.length - 1)) ** 2;
  return computeWilsonInterval(Math.min(effective, share * effective), effective);
}
