import { requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { buildProgramGroup, groupSections } from "@/lib/agreement/build-program-groups";
import { deriveRates } from "@/lib/agreement/derive-rates";
import { type JoinedCounts, joinCounts } from "@/lib/agreement/join-counts";
import { countSeeming, judgeStone } from "@/lib/agreement/judge-stone";
import { computePooledDesignEffect } from "@/lib/agreement/pooled-design-effect";
import {
  PROGRAM_MEASURES,
  type ProgramGroup,
  type ProgramReport,
  type ProgramStone,
  type SectionSummary,
} from "@/lib/agreement/program-report";
import {
  computeReaderAgreement,
  listReaderReasons,
  type ReadingPair,
} from "@/lib/agreement/reader-agreement";
import { isDefined, toUndefined } from "@/lib/agreement/statistic";
import { getDatabase } from "@/lib/data/store/database";
import { listBlindStones } from "@/lib/data/store/find-open-reading";
import { listSectionsToAdd } from "@/lib/data/store/list-sections-to-add";
import { listReadingPairs } from "@/lib/workflows/reading/list-reading-pairs";
import { KeptByStamps } from "@/lib/workflows/tally/kept-by-stamps";
import { listTallyStamps } from "@/lib/workflows/tally/list-tally-sums";
import { summariseSection } from "@/lib/workflows/tally/summarise-section";

type Sums = Pick<ProgramReport, "whole" | "sections" | "terms" | "instructors" | "designEffects"> & {
  readonly joined: JoinedCounts;
  readonly stones: ReadonlyMap<string, JoinedCounts>;
};

const kept = new KeptByStamps<Sums>(4);

async function listSummaries(): Promise<{
  summaries: SectionSummary[];
  stamps: ReadonlyMap<string, string>;
}> {
  const sections = await listSectionsToAdd();
  const stamps = await listTallyStamps(sections.flatMap(({ exercises }) => exercises.map(({ id }) => id)));
  const summaries: SectionSummary[] = [];
  for (const section of sections) summaries.push(await summariseSection(section, stamps));
  return { summaries, stamps };
}

function joinStones(summaries: readonly SectionSummary[], scales: JoinedCounts["scales"]) {
  const parts = new Map<string, JoinedCounts[]>();
  for (const { stones } of summaries) {
    for (const [stoneId, joined] of stones) parts.set(stoneId, [...(parts.get(stoneId) ?? []), joined]);
  }
  return new Map([...parts].map(([stoneId, own]) => [stoneId, joinCounts(own, scales)]));
}

function toSectionGroup(section: SectionSummary, scales: JoinedCounts["scales"]): ProgramGroup {
  const taught = section.instructors.map(({ name }) => name).join(", ");
  const detail = taught === "" ? section.term : `${section.term}, ${taught}`;
  return buildProgramGroup({ key: section.sectionId, label: section.name, detail }, [section], scales);
}

function addUp(summaries: readonly SectionSummary[]): Sums {
  const joined = joinCounts(summaries.map(({ whole }) => whole));
  const { scales } = joined;
  const inTime = summaries.toSorted((a, b) => (a.beganAt < b.beganAt ? -1 : 1));
  return {
    joined,
    whole: buildProgramGroup({ key: "program", label: "The program" }, summaries, scales),
    sections: summaries.map((section) => toSectionGroup(section, scales)),
    terms: groupSections(inTime, scales, ({ term }) => [{ key: term, label: term }]),
    instructors: groupSections(summaries, scales, ({ instructors }) =>
      instructors.map(({ id, name }) => ({ key: id, label: name })),
    ).sort((a, b) => a.label.localeCompare(b.label, "en")),
    designEffects: Object.fromEntries(
      PROGRAM_MEASURES.map((measure) => [
        measure,
        computePooledDesignEffect(summaries.map(({ clusters }) => clusters[measure])),
      ]),
    ) as ProgramReport["designEffects"],
    stones: joinStones(summaries, scales),
  };
}

/** Every stone that was handed in or read a second time, those with a reason first. */
async function listStones(
  { joined, stones, designEffects }: Sums,
  pairs: readonly ReadingPair[],
): Promise<ProgramStone[]> {
  const readerReasons = new Map<string, string[]>();
  for (const pair of pairs) {
    readerReasons.set(pair.stoneId, [...(readerReasons.get(pair.stoneId) ?? []), ...listReaderReasons(pair)]);
  }
  const rows = await getDatabase().stone.findMany({
    where: { id: { in: [...new Set([...stones.keys(), ...readerReasons.keys()])] } },
    select: { id: true, label: true, trayId: true, tray: { select: { name: true } } },
  });
  const { counts } = joined;
  const ground = {
    found: counts.found / Math.max(1, counts.found + counts.overlooked),
    seemingPerPlot: countSeeming(counts) / Math.max(1, counts.plots),
    designEffect: designEffects.found,
    stones: stones.size,
  };
  const nothing = joinCounts([], joined.scales);
  return rows
    .map(({ id, label, trayId, tray }): ProgramStone => {
      const own = stones.get(id) ?? nothing;
      const { reasons, ...judged } = judgeStone(own.counts, ground);
      const { plots, grades } = deriveRates(own.counts, own.scales);
      const exact = grades.clarity?.exact ?? toUndefined("no clarity grade was given");
      const all = [...reasons, ...(readerReasons.get(id) ?? [])];
      return { stoneId: id, trayId, label, trayName: tray.name, plots, exact, ...judged, reasons: all };
    })
    .sort(compareStones);
}

function compareStones(a: ProgramStone, b: ProgramStone): number {
  const found = ({ found: own }: ProgramStone) => (isDefined(own) ? own.value : 2);
  return b.reasons.length - a.reasons.length || found(a) - found(b) || a.label.localeCompare(b.label, "en");
}

/**
 * How a program agrees with its references: sections, terms and instructors side by side, stones that mislead, and how near its
 * second readers come to the references. From sums of tallies, remembered by their stamps; no result is read. Covers results
 * that are not released: for directors. Throws AppError `not-found`.
 */
export async function getProgramReport(viewer: Viewer): Promise<ProgramReport> {
  requireRole(viewer, "read-program");
  const { summaries, stamps } = await listSummaries();
  // Names, terms and who teaches are no part of the stamps.
  const names = JSON.stringify(
    summaries.map(({ sectionId, name, term, instructors, students }) => [
      sectionId,
      name,
      term,
      instructors,
      students,
    ]),
  );
  const { value: sums } = await kept.get(names, stamps, async () => addUp(summaries));
  const blind = await listBlindStones(viewer);
  const all = await listReadingPairs();
  const pairs = all.filter(({ stoneId }) => !blind.has(stoneId));
  const { whole, sections, terms, instructors, designEffects } = sums;
  const stones = await listStones(sums, pairs);
  return {
    whole,
    sections,
    terms,
    instructors,
    designEffects,
    stones: stones.filter(({ stoneId }) => !blind.has(stoneId)),
    readers: computeReaderAgreement(pairs),
    leftOut: [...blind.values()].sort(),
  };
}
