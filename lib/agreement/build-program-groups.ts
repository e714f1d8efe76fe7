import { type ClusterCount, computeClusteredShare } from "@/lib/agreement/clustered-share";
import type { Counts } from "@/lib/agreement/counts";
import { deriveRates } from "@/lib/agreement/derive-rates";
import { type JoinedCounts, joinCounts } from "@/lib/agreement/join-counts";
import {
  type GroupShare,
  PROGRAM_MEASURES,
  type ProgramGroup,
  type ProgramMeasure,
  type SectionSummary,
} from "@/lib/agreement/program-report";
import { toUndefined } from "@/lib/agreement/statistic";

const REASONS: Readonly<Record<ProgramMeasure, string>> = {
  found: "no reference mark was there to be found",
  exact: "no clarity grade was given",
  "within-one": "no clarity grade was given",
};

/** Of one student, the hits and trials of each measure. */
export function toMeasureClusters({
  found,
  overlooked,
  grades,
}: Counts): Record<ProgramMeasure, ClusterCount> {
  const { exact = 0, withinOne = 0, graded = 0 } = grades.clarity ?? {};
  return {
    found: { hits: found, trials: found + overlooked },
    exact: { hits: exact, trials: graded },
    "within-one": { hits: withinOne, trials: graded },
  };
}

function toShare(measure: ProgramMeasure, clusters: readonly ClusterCount[]): GroupShare {
  return {
    hits: clusters.reduce((sum, { hits }) => sum + hits, 0),
    trials: clusters.reduce((sum, { trials }) => sum + trials, 0),
    share: computeClusteredShare(clusters, REASONS[measure]),
  };
}

export interface GroupWords {
  readonly key: string;
  readonly label: string;
  readonly detail?: string;
}

/**
 * Sections as one: counts added, students' clusters side by side, and the same formulas as everywhere. `scales` are the
 * program's. Somebody who is in two of the sections counts as two students. No section: counts of nothing, all undefined.
 */
export function buildProgramGroup(
  { key, label, detail = "" }: GroupWords,
  sections: readonly SectionSummary[],
  scales: JoinedCounts["scales"],
): ProgramGroup {
  const joined = joinCounts(
    sections.map(({ whole }) => whole),
    scales,
  );
  const rates = deriveRates(joined.counts, joined.scales);
  const shares = PROGRAM_MEASURES.map((measure) => [
    measure,
    toShare(
      measure,
      sections.flatMap(({ clusters }) => clusters[measure]),
    ),
  ]);
  return {
    key,
    label,
    detail,
    sections: sections.length,
    students: sections.reduce((sum, { students }) => sum + students, 0),
    plots: rates.plots,
    shares: Object.fromEntries(shares),
    bias: rates.grades.clarity?.bias ?? toUndefined(REASONS.exact),
    straysPerPlot: rates.straysPerPlot,
  };
}

/** Sections by what `list` says they belong to, each as one; the order of first appearance. */
export function groupSections(
  sections: readonly SectionSummary[],
  scales: JoinedCounts["scales"],
  list: (section: SectionSummary) => readonly GroupWords[],
): ProgramGroup[] {
  const groups = new Map<string, { words: GroupWords; own: SectionSummary[] }>();
  for (const section of sections) {
    for (const words of list(section)) {
      const group = groups.get(words.key) ?? { words, own: [] };
      groups.set(words.key, group);
      group.own.push(section);
    }
  }
  return [...groups.values()].map(({ words, own }) => buildProgramGroup(words, own, scales));
}
