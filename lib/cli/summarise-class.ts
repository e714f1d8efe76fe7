/**
 * The class at a glance (design.md, `report`). Counts are kept and every ratio is derived from them by one function,
 * for a student as for a stone, so that no two rows can follow different formulas. What cannot be said (a share of
 * nothing) is null, never a number.
 */
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import type { FiledPlot } from "@/lib/plot/plots-file";
import type { ScoreResult } from "@/lib/plot/score-result";
import type { Stone } from "@/lib/plot/stone";

/** A plot with its result and the stone that it is of. */
export interface ScoredRow {
  readonly plot: FiledPlot;
  readonly result: ScoreResult;
  readonly stone: Stone;
}

/** What is counted of the plots of a student, or of a stone. Grades are of clarity; steps are plot less reference. */
interface Tally {
  plots: number;
  totalHundredths: number;
  graded: number;
  exact: number;
  withinOne: number;
  steps: number;
  found: number;
  overlooked: number;
  strays: number;
}

/** `exact` and `withinOne` are shares of the plots that give a clarity grade; positive `bias` is harsher, in steps. */
export interface TallyRow {
  readonly plots: number;
  readonly meanTotal: number | null;
  readonly exact: number | null;
  readonly withinOne: number | null;
  readonly bias: number | null;
  readonly found: number;
  readonly overlooked: number;
  readonly strays: number;
}

export interface CharacteristicRow {
  readonly characteristic: string;
  /** Reference marks of it over all plots, optional ones left out; and how many of them were found. */
  readonly reference: number;
  readonly found: number;
  /** What the found ones were called, the right name included: the counts add up to `found`. */
  readonly takenFor: Readonly<Record<string, number>>;
}

export interface FreeResponseRow {
  readonly confidence: number;
  readonly foundShare: number | null;
  readonly straysPerPlot: number | null;
}

export interface ClassSummary {
  readonly students: readonly ({ readonly by: string } & TallyRow)[];
  readonly characteristics: readonly CharacteristicRow[];
  readonly stones: readonly ({ readonly stone: string } & TallyRow)[];
  readonly freeResponse: readonly FreeResponseRow[];
}

const CONFIDENCES = [5, 4, 3, 2, 1];
const UNSAID_CONFIDENCE = 1;

const divide = (sum: number, count: number) => (count === 0 ? null : sum / count);

function countUp(rows: readonly ScoredRow[], clarities: readonly string[]): Tally {
  const tally: Tally = {
    plots: 0,
    totalHundredths: 0,
    graded: 0,
    exact: 0,
    withinOne: 0,
    steps: 0,
    found: 0,
    overlooked: 0,
    strays: 0,
  };
  for (const { plot, result, stone } of rows) {
    tally.plots += 1;
    tally.totalHundredths += Math.round(result.total * 100);
    tally.found += result.found.length;
    tally.overlooked += result.overlooked.length;
    tally.strays += result.strays.length;
    if (plot.grades.clarity === undefined) continue;
    const steps = clarities.indexOf(plot.grades.clarity) - clarities.indexOf(stone.grades.clarity);
    tally.graded += 1;
    tally.steps += steps;
    if (steps === 0) tally.exact += 1;
    if (Math.abs(steps) <= 1) tally.withinOne += 1;
  }
  return tally;
}

function toTallyRow({ plots, totalHundredths, graded, ...tally }: Tally): TallyRow {
  const meanHundredths = divide(totalHundredths, plots);
  return {
    plots,
    meanTotal: meanHundredths === null ? null : meanHundredths / 100,
    exact: divide(tally.exact, graded),
    withinOne: divide(tally.withinOne, graded),
    bias: divide(tally.steps, graded),
    found: tally.found,
    overlooked: tally.overlooked,
    strays: tally.strays,
  };
}

function groupBy(rows: readonly ScoredRow[], toKey: (row: ScoredRow) => string): [string, ScoredRow[]][] {
  const groups = new Map<string, ScoredRow[]>();
  for (const row of rows) {
    const group = groups.get(toKey(row));
    if (group === undefined) groups.set(toKey(row), [row]);
    else group.push(row);
  }
  return [...groups];
}

/** One row for each characteristic that a reference has, in the order of the table of characteristics. */
function listCharacteristics(rows: readonly ScoredRow[], order: readonly string[]): CharacteristicRow[] {
  const counts = new Map<string, { reference: number; found: number; takenFor: Map<string, number> }>();
  for (const { plot, result, stone } of rows) {
    const plotted = new Map(plot.marks.map(({ id, characteristic }) => [id, characteristic]));
    const foundBy = new Map(result.found.map(({ reference, mark }) => [reference, mark]));
    for (const { id, characteristic, optional } of stone.marks) {
      if (optional) continue;
      const count = counts.get(characteristic) ?? { reference: 0, found: 0, takenFor: new Map() };
      counts.set(characteristic, count);
      count.reference += 1;
      const name = plotted.get(foundBy.get(id) ?? "");
      if (name === undefined) continue;
      count.found += 1;
      count.takenFor.set(name, (count.takenFor.get(name) ?? 0) + 1);
    }
  }
  return order.flatMap((characteristic) => {
    const count = counts.get(characteristic);
    if (count === undefined) return [];
    const { reference, found, takenFor } = count;
    const names = order.filter((name) => takenFor.has(name));
    const listed = Object.fromEntries(names.map((name) => [name, takenFor.get(name) ?? 0]));
    return [{ characteristic, reference, found, takenFor: listed }];
  });
}

/** Cumulated from confidence 5 down to 1: found of all reference marks, strays to a plot. */
function listFreeResponse(rows: readonly ScoredRow[]): FreeResponseRow[] {
  const found: number[] = [];
  const strays: number[] = [];
  let references = 0;
  for (const { plot, result, stone } of rows) {
    const confidence = new Map(plot.marks.map((mark) => [mark.id, mark.confidence ?? UNSAID_CONFIDENCE]));
    references += stone.marks.filter(({ optional }) => !optional).length;
    found.push(...result.found.map(({ mark }) => confidence.get(mark) ?? UNSAID_CONFIDENCE));
    strays.push(...result.strays.map(({ mark }) => confidence.get(mark) ?? UNSAID_CONFIDENCE));
  }
  return CONFIDENCES.map((confidence) => ({
    confidence,
    foundShare: divide(found.filter((one) => one >= confidence).length, references),
    straysPerPlot: divide(strays.filter((one) => one >= confidence).length, rows.length),
  }));
}

/**
 * Summarises scored plots. Students stand in the order in which the plots first name them, stones in the order of the
 * set (only those that a plot is of). No plots give no students and no stones, and a free-response curve of nulls.
 */
export function summariseClass(resolved: ResolvedSet, rows: readonly ScoredRow[]): ClassSummary {
  const clarities = resolved.scales.clarity;
  const toRow = (group: readonly ScoredRow[]) => toTallyRow(countUp(group, clarities));
  const byStone = new Map(groupBy(rows, ({ plot }) => plot.stone));
  return {
    students: groupBy(rows, ({ plot }) => plot.by).map(([by, group]) => ({ by, ...toRow(group) })),
    characteristics: listCharacteristics(rows, [...resolved.characteristics.keys()]),
    stones: resolved.set.stones.flatMap(({ id }) => {
      const group = byStone.get(id);
      return group === undefined ? [] : [{ stone: id, ...toRow(group) }];
    }),
    freeResponse: listFreeResponse(rows),
  };
}
