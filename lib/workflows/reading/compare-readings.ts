/** A second reading held against the reference by the engine that scores students. Pure. */

import type { PlotTerms } from "@/lib/plot/find-plot-faults";
import { getSampleCentre } from "@/lib/plot/get-sample-centre";
import { getShapeDistance } from "@/lib/plot/get-shape-distance";
import { GRADED_PROPERTIES, type PlotGrades, type ReferenceGrades } from "@/lib/plot/grades";
import type { Decoy, PlottedMark, ReferenceMark } from "@/lib/plot/mark";
import type { Rubric } from "@/lib/plot/rubric";
import {
  type ReadingComparison,
  type ReadingDifference,
  type ReadingFigures,
  type ReadingPlot,
  toDifferenceKey,
} from "@/lib/plot/second-reading";
import type { Reference, StoneBody } from "@/lib/plot/stone";
import { turnShape } from "@/lib/plot/turn-shape";
import { scorePlot } from "@/lib/scoring/score-plot";

export interface ReadingGround {
  readonly stone: StoneBody;
  readonly terms: PlotTerms;
  readonly rubric: Rubric;
}

/** Every mark counts, and counts the same. */
const toPlainMark = ({ id, view, characteristic, shape, depth }: ReferenceMark): ReferenceMark => ({
  id,
  view,
  characteristic,
  shape,
  ...(depth === undefined ? {} : { depth }),
});
const toPlotted = ({ id, view, characteristic, shape }: ReferenceMark): PlottedMark => ({
  id,
  view,
  characteristic,
  shape,
});

interface Reading {
  readonly grades: PlotGrades;
  readonly marks: readonly ReferenceMark[];
}

function holdAgainst(first: Reading, second: Reading, { stone, terms, rubric }: ReadingGround) {
  const grades: ReferenceGrades = { ...first.grades, clarity: first.grades.clarity ?? "" };
  return scorePlot({
    stoneId: "stone",
    by: "second",
    stone,
    reference: { grades, marks: first.marks.map(toPlainMark), decoys: [] },
    plot: { grades: second.grades, marks: second.marks.map(toPlotted) },
    rubric,
    ...terms,
  });
}

function listGradeSteps(
  first: PlotGrades,
  second: PlotGrades,
  { terms }: ReadingGround,
): ReadingFigures["grades"] {
  return GRADED_PROPERTIES.flatMap((property) => {
    const [one, two] = [first[property], second[property]];
    if (one === undefined || two === undefined) return [];
    const scale = terms.scales[property];
    return { property, first: one, second: two, steps: scale.indexOf(two) - scale.indexOf(one) };
  });
}

function listGradeDifferences(first: PlotGrades, second: PlotGrades): ReadingDifference[] {
  return GRADED_PROPERTIES.flatMap((property): ReadingDifference[] => {
    const [one = null, two = null] = [first[property], second[property]];
    if (one === null && two === null) return [];
    return [
      {
        key: toDifferenceKey("grade", property),
        kind: "grade",
        agrees: one === two,
        first: null,
        second: null,
        distance: null,
        grades: { property, first: one, second: two },
      },
    ];
  });
}

function toOneSided(kind: ReadingDifference["kind"], place: ReferenceMark | Decoy): ReadingDifference {
  const isFirst = kind === "only-first" || kind === "decoy-only-first";
  return {
    key: toDifferenceKey(kind, place.id),
    kind,
    agrees: false,
    first: isFirst ? place : null,
    second: isFirst ? null : place,
    distance: null,
    grades: null,
  };
}

function listMarkDifferences(
  first: readonly ReferenceMark[],
  second: readonly ReferenceMark[],
  pairs: readonly { readonly reference: string; readonly mark: string; readonly distance: number | null }[],
  near: number,
): ReadingDifference[] {
  const paired = pairs.flatMap(({ reference, mark, distance }): ReadingDifference[] => {
    const one = first.find(({ id }) => id === reference);
    const two = second.find(({ id }) => id === mark);
    if (one === undefined || two === undefined) return [];
    const isNear = one.view === two.view && distance !== null && distance <= near;
    const agrees = isNear && one.characteristic === two.characteristic;
    return [
      {
        ...toOneSided("only-first", one),
        key: toDifferenceKey("pair", one.id),
        kind: "pair",
        agrees,
        second: two,
        distance,
      },
    ];
  });
  const inPair = (side: "first" | "second", id: string) => paired.some((one) => one[side]?.id === id);
  return [
    ...paired,
    ...first.filter(({ id }) => !inPair("first", id)).map((mark) => toOneSided("only-first", mark)),
    ...second.filter(({ id }) => !inPair("second", id)).map((mark) => toOneSided("only-second", mark)),
  ];
}

/** A decoy of one reading that the other has none near. */
function listDecoyDifferences(
  first: readonly Decoy[],
  second: readonly Decoy[],
  near: number,
): ReadingDifference[] {
  const hasNear = ({ view, shape }: Decoy, others: readonly Decoy[]) =>
    others.some(
      (other) => other.view === view && getShapeDistance(other.shape, getSampleCentre(shape)) <= near,
    );
  return [
    ...first.filter((decoy) => !hasNear(decoy, second)).map((decoy) => toOneSided("decoy-only-first", decoy)),
    ...second
      .filter((decoy) => !hasNear(decoy, first))
      .map((decoy) => toOneSided("decoy-only-second", decoy)),
  ];
}

/**
 * Compares a second reading with the reference, both ways, by the rubric of the stone's tray with every mark of equal weight
 * and none optional. Pairs are those that the engine assigns one to one; an outline that encloses several marks is no pair
 * here, since one of the two must be kept. The second's marks come laid on the first's.
 */
export function compareReadings(
  reference: Reference,
  reading: ReadingPlot,
  ground: ReadingGround,
): ReadingComparison {
  const { result, detail } = holdAgainst(reference, reading, ground);
  const back = holdAgainst(reading, reference, ground);
  const { turnDeg } = result.alignment;
  const lay = <P extends ReferenceMark | Decoy>(place: P): P => ({
    ...place,
    shape: turnShape(place.view, place.shape, turnDeg),
  });
  const pairs = detail.found.filter(({ how }) => how !== "merged");
  const { near } = ground.rubric;
  const differences = [
    ...listMarkDifferences(reference.marks, reading.marks.map(lay), pairs, near),
    ...listDecoyDifferences(reference.decoys, reading.decoys.map(lay), near),
    ...listGradeDifferences(reference.grades, reading.grades),
  ];
  const matched = differences.filter(({ kind }) => kind === "pair");
  return {
    figures: {
      first: reference.marks.length,
      second: reading.marks.length,
      matched: matched.length,
      named: matched.filter(({ first, second }) => getName(first) === getName(second)).length,
      secondByFirst: detail.foundShare,
      firstBySecond: back.detail.foundShare,
      ospa: detail.setDistance.ospa,
      gospa: detail.setDistance.gospa,
      turnDeg,
      grades: listGradeSteps(reference.grades, reading.grades, ground),
    },
    differences,
  };
}

const getName = (place: ReferenceMark | Decoy | null) =>
  place !== null && "characteristic" in place ? place.characteristic : null;
