/**
 * The one door to the engine. Aim: of all the ways to read a plot, the student gets the best one that the rubric allows,
 * with an account of every point (SPEC.md beside this file; the rules are numbered there).
 *
 * The pipeline, in the order in which it runs: prepare-reference and prepare-plot measure; choose-reading lays the plot
 * on the reference in every way allowed; list-pairs, match-marks, find-causes and count-points work one reading out;
 * apply-overrules rules on the one that counts;
 * explain-found, explain-stray, list-lines and suggest-practice say why; rank-stones asks the rest of the tray.
 *
 * Pure: the same input gives the same result, in whatever order marks and references come. Frames and units are
 * those of the files (design.md); pairs are always (reference, plotted).
 */
import type { CharacteristicTable } from "@/lib/plot/characteristic";
import { findDottingBursts } from "@/lib/plot/find-dotting";
import type { Scales } from "@/lib/plot/grades";
import type { Overrule, OverruleFate } from "@/lib/plot/overrule";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import type { Plot, PlotsFile } from "@/lib/plot/plots-file";
import type { Rubric } from "@/lib/plot/rubric";
import type { ScoreDetail, ScoredPlot, SetDistance } from "@/lib/plot/score-result";
import { type Reference, type StoneBody, toReference } from "@/lib/plot/stone";
import { applyOverrules } from "@/lib/scoring/apply-overrules";
import { type ChosenReading, chooseReading } from "@/lib/scoring/choose-reading";
import { comparePlaces } from "@/lib/scoring/compare-places";
import { getDeduction, getGradePoints, roundLines } from "@/lib/scoring/count-points";
import type { Exhibit } from "@/lib/scoring/exhibit";
import { explainMatched, explainMerged } from "@/lib/scoring/explain-found";
import { explainStray } from "@/lib/scoring/explain-stray";
import { listLines } from "@/lib/scoring/list-lines";
import { getGirdleWidthMm } from "@/lib/scoring/name-things";
import { type PlottedModel, preparePlot } from "@/lib/scoring/prepare-plot";
import { type PreparedReference, prepareReference } from "@/lib/scoring/prepare-reference";
import { findSuspectStone } from "@/lib/scoring/rank-stones";
import { type GradeRating, rateGrades } from "@/lib/scoring/rate-grades";
import type { Rulings } from "@/lib/scoring/sort-rulings";
import { suggestPractice } from "@/lib/scoring/suggest-practice";

export { identifyStone } from "@/lib/scoring/identify-stone";
export { type PreparedReference, prepareReference } from "@/lib/scoring/prepare-reference";
export { rankStones } from "@/lib/scoring/rank-stones";

/** Kept with every result: a change that can move a point raises it. */
export const ENGINE_VERSION = "1.0.0";

export interface ScoreInput {
  readonly stoneId: string;
  /** Who plotted. */
  readonly by: string;
  readonly stone: StoneBody;
  /** Keep this object while many plots are scored by it: what is measured of it is remembered with it. */
  readonly reference: Reference;
  readonly plot: Plot;
  readonly rubric: Rubric;
  readonly scales: Scales;
  readonly characteristics: CharacteristicTable;
  /** References of the stones that this one may have been swapped with; its own may be among them. */
  readonly tray?: readonly PreparedReference[];
  /** What an instructor ruled on this plot, in the order in which it was made (SPEC 10). */
  readonly overrules?: readonly Overrule[];
}

/** The distances to nine decimals: what lies beyond is rounding noise. */
function roundDistances({ ospa, gospa, location, overlooked, strays }: SetDistance): SetDistance {
  const round = (value: number) => Math.round(value * 1e9) / 1e9;
  return {
    ospa: round(ospa),
    gospa: round(gospa),
    location: round(location),
    overlooked: round(overlooked),
    strays: round(strays),
  };
}

interface Verdict extends ChosenReading {
  readonly rulings: Rulings;
  readonly fates: readonly OverruleFate[];
  readonly prepared: PreparedReference;
  readonly plotted: readonly PlottedModel[];
  readonly grades: readonly GradeRating[];
  readonly suspectStone: string | null;
}

function judgePlot(input: ScoreInput): Verdict {
  const { plot, rubric, tray = [], overrules = [] } = input;
  const prepared = prepareReference(input);
  const plotted = preparePlot(plot);
  const bursts = findDottingBursts(plot.marks, rubric.dust);
  const grades = rateGrades(input.reference.grades, plot.grades, rubric, input.scales);
  const gradePoints = getGradePoints(grades);
  const chosen = chooseReading({ prepared, plotted, bursts, rubric, gradePoints });
  return {
    ...chosen,
    ...applyOverrules({ prepared, counted: chosen.counted, grades }, overrules, bursts, rubric),
    prepared,
    plotted,
    suspectStone: findSuspectStone(prepared, plotted, tray, rubric),
  };
}

function listFound(exhibit: Exhibit) {
  const { matching } = exhibit;
  return [
    ...matching.matched.map((pair) => ({ index: pair.reference, ...explainMatched(exhibit, pair) })),
    ...matching.merges.map((merge) => ({ index: merge.reference, ...explainMerged(exhibit, merge) })),
  ].sort((a, b) => a.index - b.index);
}

function explainVerdict(
  verdict: Verdict,
  rubric: Rubric,
): { exhibit: Exhibit; detail: ScoreDetail } & Explained {
  const { counted, prepared, rulings } = verdict;
  const { laid, matching, strays } = counted;
  const widthMm = getGirdleWidthMm(prepared.stone);
  const exhibit: Exhibit = { prepared, laid, matching, rubric, widthMm, rulings };
  const found = listFound(exhibit);
  const explained = strays.flatMap((stray) => explainStray(exhibit, stray) ?? []);
  const detail: ScoreDetail = {
    engineVersion: ENGINE_VERSION,
    found: found.map((one) => one.detail),
    strays: explained.map((one) => one.detail),
    setAside: matching.setAside.map(({ reference, plotted }) => ({
      reference: prepared.marks[reference]?.mark.id ?? "",
      mark: laid[plotted]?.mark.id ?? "",
    })),
    foundShare: matching.foundShare,
    deduction: getDeduction(strays, rubric).deducted,
    setDistance: roundDistances(comparePlaces(prepared, laid, matching, rubric).distance),
    viewFit: verdict.viewFit,
    practise: suggestPractice({ ...verdict, ...exhibit, strays }),
    overrules: [...verdict.fates],
  };
  return {
    exhibit,
    detail,
    found: found.map((one) => one.result),
    strays: explained.map((one) => one.result),
  };
}

type Explained = Pick<ScoredPlot["result"], "found" | "strays">;

/**
 * Scores and explains one plot. `result` is what the command line prints; `detail` is what a debrief shows besides.
 * Found and overlooked come in the order of the reference marks' ids, strays in that of the plotted marks' ids. An
 * empty plot is scored like any other. Throws AppError "bad-input" for proportions that make no stone.
 */
export function scorePlot(input: ScoreInput): ScoredPlot {
  const { stoneId, by, rubric } = input;
  const verdict = judgePlot(input);
  const { counted, wouldFit, prepared, grades, suspectStone } = verdict;
  const { exhibit, detail, found, strays } = explainVerdict(verdict, rubric);
  const { lines, total } = roundLines(listLines(exhibit, counted.strays, grades));
  const has = new Set(found.map(({ reference }) => reference));
  const overlooked = prepared.marks.flatMap(({ mark, optional }) =>
    optional || has.has(mark.id) ? [] : [mark.id],
  );
  const alignment = { turnDeg: counted.reading.turnDeg, wouldFit };
  return {
    result: { stone: stoneId, by, total, alignment, found, overlooked, strays, lines, suspectStone },
    detail,
  };
}

/** Scores every plot of a file against its set, the set's stones being the tray. In the order of the plots. */
export function scorePlots(resolved: ResolvedSet, file: PlotsFile): ScoredPlot[] {
  const { set, rubric, scales, characteristics } = resolved;
  const sources = set.stones.map((stone) => ({
    stoneId: stone.id,
    stone,
    reference: toReference(stone),
    characteristics,
  }));
  const tray = sources.map((source) => prepareReference(source));
  const byId = new Map(sources.map((source) => [source.stoneId, source]));
  return file.plots.flatMap((plot) => {
    const source = byId.get(plot.stone);
    return source === undefined ? [] : [scorePlot({ ...source, by: plot.by, plot, rubric, scales, tray })];
  });
}
