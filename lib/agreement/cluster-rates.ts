import { type ClusterCount, computeClusteredShare } from "@/lib/agreement/clustered-share";
import type { Counts } from "@/lib/agreement/counts";
import type { Statistic } from "@/lib/agreement/statistic";

/** Shares of a group of students, with intervals that know that one student's marks are alike. */
export interface ClusterRates {
  /** Of the clarity grades. */
  readonly exact: Statistic;
  readonly withinOne: Statistic;
  readonly detection: Statistic;
  /** Detection by characteristic. */
  readonly characteristics: Readonly<Record<string, Statistic>>;
}

/**
 * The shares that `deriveRates` gives for the sum of these counts, the same values, with the interval of
 * `computeClusteredShare`: each of `students` is a cluster. No student: all undefined.
 */
export function deriveClusterRates(students: readonly Counts[]): ClusterRates {
  const share = (toCluster: (counts: Counts) => ClusterCount, reason: string) =>
    computeClusteredShare(students.map(toCluster), reason);
  const grade = (key: "exact" | "withinOne") =>
    share(
      ({ grades }) => ({ hits: grades.clarity?.[key] ?? 0, trials: grades.clarity?.graded ?? 0 }),
      "nothing was graded",
    );
  const names = [...new Set(students.flatMap(({ characteristics }) => Object.keys(characteristics)))].sort();
  return {
    exact: grade("exact"),
    withinOne: grade("withinOne"),
    detection: share(
      ({ found, overlooked }) => ({ hits: found, trials: found + overlooked }),
      "no reference mark",
    ),
    characteristics: Object.fromEntries(
      names.map((name) => [
        name,
        share(({ characteristics }) => {
          const own = Object.hasOwn(characteristics, name) ? characteristics[name] : undefined;
          return { hits: own?.found ?? 0, trials: own?.reference ?? 0 };
        }, "no reference mark of this characteristic"),
      ]),
    ),
  };
}
