import { addTallies, mergeRecords, type Tally } from "@/lib/agreement/tally";

/** What is counted of one characteristic. */
export interface CharacteristicCounts {
  /** Reference marks of it, optional ones left out. */
  readonly reference: number;
  /** Those of them that were found. */
  readonly found: number;
  /** As what the found ones were plotted, this characteristic itself included. Sums to `found`. */
  readonly takenFor: Tally;
  /** Strays that were plotted as it. */
  readonly strays: number;
}

/** What is counted of one graded property. Steps are plotted less reference, on a scale listed best first. */
export interface GradeCounts {
  /** Plots in which both the reference and the student gave the grade. */
  readonly graded: number;
  readonly exact: number;
  readonly withinOne: number;
  readonly steps: number;
  readonly stepsSquared: number;
  /** `confusion[reference][plotted]`: how often. Sums to `graded`. */
  readonly confusion: Readonly<Record<string, Tally>>;
}

/** Found marks and strays by confidence 1 to 5 (place 0 is confidence 1; marks without confidence count as 1). */
export interface FreeResponseCounts {
  readonly found: readonly number[];
  readonly strays: readonly number[];
}

/**
 * What is kept of scored plots: whole numbers only, so that adding is exact in any order. One plot, a student, a section
 * and a program are all a `Counts`, and every ratio is derived from it by `deriveRates`, so that no average can follow
 * another formula than a single result.
 */
export interface Counts {
  readonly plots: number;
  /** Totals in hundredths of a point, and their squares. */
  readonly hundredths: number;
  readonly hundredthsSquared: number;
  readonly found: number;
  readonly overlooked: number;
  /** Strays by cause. */
  readonly strays: Tally;
  /** Sum over plots of the squared number of strays. */
  readonly straysSquared: number;
  readonly characteristics: Readonly<Record<string, CharacteristicCounts>>;
  readonly grades: Readonly<Record<string, GradeCounts>>;
  readonly freeResponse: FreeResponseCounts;
}

/** Counts of nothing: adding it changes nothing. */
export const NO_COUNTS: Counts = {
  plots: 0,
  hundredths: 0,
  hundredthsSquared: 0,
  found: 0,
  overlooked: 0,
  strays: {},
  straysSquared: 0,
  characteristics: {},
  grades: {},
  freeResponse: { found: [0, 0, 0, 0, 0], strays: [0, 0, 0, 0, 0] },
};

/** Adds what is counted of one characteristic in two places. */
export function addCharacteristicCounts(
  a: CharacteristicCounts,
  b: CharacteristicCounts,
): CharacteristicCounts {
  return {
    reference: a.reference + b.reference,
    found: a.found + b.found,
    takenFor: addTallies(a.takenFor, b.takenFor),
    strays: a.strays + b.strays,
  };
}

function addGrades(a: GradeCounts, b: GradeCounts): GradeCounts {
  return {
    graded: a.graded + b.graded,
    exact: a.exact + b.exact,
    withinOne: a.withinOne + b.withinOne,
    steps: a.steps + b.steps,
    stepsSquared: a.stepsSquared + b.stepsSquared,
    confusion: mergeRecords(a.confusion, b.confusion, addTallies),
  };
}

const addPlaces = (a: readonly number[], b: readonly number[]) =>
  a.map((count, place) => count + (b[place] ?? 0));

/** Adds two counts. Commutative and associative, `NO_COUNTS` its zero: sections add up from students in any order. */
export function addCounts(a: Counts, b: Counts): Counts {
  return {
    plots: a.plots + b.plots,
    hundredths: a.hundredths + b.hundredths,
    hundredthsSquared: a.hundredthsSquared + b.hundredthsSquared,
    found: a.found + b.found,
    overlooked: a.overlooked + b.overlooked,
    strays: addTallies(a.strays, b.strays),
    straysSquared: a.straysSquared + b.straysSquared,
    characteristics: mergeRecords(a.characteristics, b.characteristics, addCharacteristicCounts),
    grades: mergeRecords(a.grades, b.grades, addGrades),
    freeResponse: {
      found: addPlaces(a.freeResponse.found, b.freeResponse.found),
      strays: addPlaces(a.freeResponse.strays, b.freeResponse.strays),
    },
  };
}

/** The sum of any number of counts; none gives `NO_COUNTS`. */
export function sumCounts(all: Iterable<Counts>): Counts {
  let sum = NO_COUNTS;
  for (const counts of all) sum = addCounts(sum, counts);
  return sum;
}
