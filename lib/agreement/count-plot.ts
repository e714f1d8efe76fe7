import {
  addCharacteristicCounts,
  type CharacteristicCounts,
  type Counts,
  type GradeCounts,
} from "@/lib/agreement/counts";
import { mergeRecords, type Tally, tallyNames } from "@/lib/agreement/tally";
import { GRADED_PROPERTIES, type PlotGrades, type Scales } from "@/lib/plot/grades";
import type { PlottedMark, ReferenceMark } from "@/lib/plot/mark";
import type { ScoreResult } from "@/lib/plot/score-result";

/** What counting a plot needs: the two sides that were compared, and what the engine says of them. */
export interface CountedPlot {
  readonly reference: { readonly grades: PlotGrades; readonly marks: readonly ReferenceMark[] };
  readonly plotted: { readonly grades: PlotGrades; readonly marks: readonly PlottedMark[] };
  readonly result: Pick<ScoreResult, "total" | "found" | "overlooked" | "strays">;
  readonly scales: Scales;
}

/** One pair of grades; null where either side gave none or the scale does not have it. */
function countGrade(
  reference: string | undefined,
  plotted: string | undefined,
  scale: readonly string[],
): GradeCounts | null {
  if (reference === undefined || plotted === undefined) return null;
  const [from, to] = [scale.indexOf(reference), scale.indexOf(plotted)];
  if (from < 0 || to < 0) return null;
  const steps = to - from;
  return {
    graded: 1,
    exact: steps === 0 ? 1 : 0,
    withinOne: Math.abs(steps) <= 1 ? 1 : 0,
    steps,
    stepsSquared: steps * steps,
    confusion: Object.fromEntries([[reference, tallyNames([plotted])]]),
  };
}

function countGrades({ reference, plotted, scales }: CountedPlot): Counts["grades"] {
  return Object.fromEntries(
    GRADED_PROPERTIES.flatMap((property) => {
      const counts = countGrade(reference.grades[property], plotted.grades[property], scales[property]);
      return counts ? [[property, counts] as const] : [];
    }),
  );
}

const NO_CHARACTERISTIC: CharacteristicCounts = { reference: 0, found: 0, takenFor: {}, strays: 0 };

/** Names of marks by their ids. */
function mapCharacteristics(marks: readonly (ReferenceMark | PlottedMark)[]): Map<string, string> {
  return new Map(marks.map((mark) => [mark.id, mark.characteristic]));
}

function countCharacteristics({ reference, plotted, result }: CountedPlot): Counts["characteristics"] {
  const ofReference = mapCharacteristics(reference.marks);
  const ofPlotted = mapCharacteristics(plotted.marks);
  const nameOf = (names: Map<string, string>, id: string) => names.get(id) ?? [];
  const found = tallyNames(result.found.flatMap((pair) => nameOf(ofReference, pair.reference)));
  const overlooked = tallyNames(result.overlooked.flatMap((id) => nameOf(ofReference, id)));
  const strays = tallyNames(result.strays.flatMap((stray) => nameOf(ofPlotted, stray.mark)));
  const takenFor = new Map<string, string[]>();
  for (const pair of result.found) {
    const [real, seen] = [ofReference.get(pair.reference), ofPlotted.get(pair.mark)];
    if (real !== undefined && seen !== undefined) takenFor.set(real, [...(takenFor.get(real) ?? []), seen]);
  }
  const toCounts = (tally: Tally, make: (count: number, name: string) => Partial<CharacteristicCounts>) =>
    Object.fromEntries(
      Object.entries(tally).map(([name, count]) => [name, { ...NO_CHARACTERISTIC, ...make(count, name) }]),
    );
  const parts = [
    toCounts(found, (count, name) => ({
      reference: count,
      found: count,
      takenFor: tallyNames(takenFor.get(name) ?? []),
    })),
    toCounts(overlooked, (count) => ({ reference: count })),
    toCounts(strays, (count) => ({ strays: count })),
  ];
  return parts.reduce((sum, part) => mergeRecords(sum, part, addCharacteristicCounts));
}

/** How many of the marks were drawn with confidence 1, 2, 3, 4, 5; without any counts as 1. */
function countConfidences(ids: readonly string[], marks: readonly PlottedMark[]): number[] {
  const confidences = new Map(marks.map((mark) => [mark.id, mark.confidence ?? 1]));
  const given = ids.map((id) => confidences.get(id) ?? 1);
  return [1, 2, 3, 4, 5].map((confidence) => given.filter((one) => one === confidence).length);
}

/**
 * Counts one scored plot. Reference marks are those that the result calls found or overlooked, so optional ones are left
 * out as the engine leaves them out; grades that either side lacks are not counted. A plot without marks counts as a plot.
 */
export function countPlot(plot: CountedPlot): Counts {
  const { result, plotted } = plot;
  const hundredths = Math.round(result.total * 100);
  return {
    plots: 1,
    hundredths,
    hundredthsSquared: hundredths * hundredths,
    found: result.found.length,
    overlooked: result.overlooked.length,
    strays: tallyNames(result.strays.map((stray) => stray.cause)),
    straysSquared: result.strays.length ** 2,
    characteristics: countCharacteristics(plot),
    grades: countGrades(plot),
    freeResponse: {
      found: countConfidences(
        result.found.map((pair) => pair.mark),
        plotted.marks,
      ),
      strays: countConfidences(
        result.strays.map((stray) => stray.mark),
        plotted.marks,
      ),
    },
  };
}
