/** The rows of a debrief: what was found, overlooked, stray or set aside, in the words that the screen shows. Pure. */

import type { EchoWay } from "@/components/debrief/find-echo-ways";
import { type CalloutWords, createCalloutWords } from "@/components/debrief/to-callout-words";
import { toFacetWords } from "@/components/echoes/build-echo-layer";
import { getMiddle } from "@/lib/editor/measure-shape";
import { createDocument, listMarks } from "@/lib/editor/plot-document";
import { getSolid, type Solid } from "@/lib/gem/build-solid";
import { locatePoint } from "@/lib/gem/locate-point";
import type { View } from "@/lib/gem/point";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { Cause, PlottedMark, ReferenceMark } from "@/lib/plot/mark";
import type { DebriefView } from "@/lib/plot/student-view";

export type Outcome = "found" | "overlooked" | "stray" | "set-aside";

export interface DebriefRow {
  readonly outcome: Outcome;
  /** What highlighting goes by: of the plotted mark, or of the reference mark that was overlooked. */
  readonly key: string;
  /** The same thing on the other side: the reference mark of a found one. */
  readonly partnerKey: string | null;
  readonly callout: string;
  readonly view: View;
  readonly title: string;
  readonly place: string;
  readonly cause: Cause | null;
  readonly words: readonly string[];
  /** What it cost, in points, the costliest first; nothing that cost less than a hundredth. */
  readonly costs: readonly { readonly what: string; readonly points: number }[];
  /** Share of what the mark is worth that it earned, found marks only. */
  readonly value: number | null;
}

export const toMarkKey = (id: string) => `mark:${id}`;
export const toReferenceKey = (id: string) => `reference:${id}`;

export const CAUSE_LABELS: Readonly<Record<Cause, string>> = {
  dust: "Dust",
  echo: "Echo",
  glint: "Glint",
  double: "Double",
  fragment: "Fragment",
  "other-view": "Other view",
  unexplained: "Unexplained",
};

interface Terms {
  readonly view: DebriefView;
  readonly solid: Solid;
  readonly plotted: ReadonlyMap<string, PlottedMark>;
  readonly reference: ReadonlyMap<string, ReferenceMark>;
  /** The callout of every plotted mark, in the order of drawing, and of the overlooked ones, going on from there. */
  readonly callouts: ReadonlyMap<string, string>;
  readonly say: CalloutWords;
  readonly ways: readonly EchoWay[];
}

/** The number of a reference mark: of the mark that found it, else its own; null where it has none. */
function findReferenceCallout(view: DebriefView, callouts: Terms["callouts"], id: string): string | null {
  const finder = view.result.found.find(({ reference }) => reference === id);
  return callouts.get(finder === undefined ? toReferenceKey(id) : toMarkKey(finder.mark)) ?? null;
}

function createSay(
  view: DebriefView,
  marks: readonly PlottedMark[],
  callouts: Terms["callouts"],
): CalloutWords {
  return createCalloutWords(marks, view.reference, (side, id) =>
    side === "plotted" ? (callouts.get(toMarkKey(id)) ?? null) : findReferenceCallout(view, callouts, id),
  );
}

function readTerms(view: DebriefView, ways: readonly EchoWay[] = []): Terms {
  const marks = listMarks(createDocument(view.plot.marks));
  const numbered = [
    ...marks.map(({ id }) => toMarkKey(id)),
    ...view.result.overlooked.map((id) => toReferenceKey(id)),
  ];
  const callouts = new Map(numbered.map((key, index) => [key, String(index + 1)]));
  return {
    view,
    solid: getSolid(view.stone.cut, view.stone.proportions),
    plotted: new Map(marks.map((mark) => [mark.id, mark])),
    reference: new Map(view.reference.marks.map((mark) => [mark.id, mark])),
    callouts,
    say: createSay(view, marks, callouts),
    ways,
  };
}

function toLabel({ view }: Terms, name: string): string {
  return view.characteristics.find((one) => one.name === name)?.label ?? toCharacteristicLabel(name);
}

function toRow(
  terms: Terms,
  mark: PlottedMark | ReferenceMark,
  key: string,
  given: Pick<DebriefRow, "outcome" | "words"> & Partial<DebriefRow>,
): DebriefRow {
  return {
    key,
    partnerKey: null,
    callout: terms.callouts.get(key) ?? "",
    view: mark.view,
    title: toLabel(terms, mark.characteristic),
    place: locatePoint(terms.solid, mark.view, getMiddle(mark.shape)).words,
    cause: null,
    value: null,
    costs: [],
    ...given,
    // What was overruled stands beside the row, by whom and when.
    words: given.words.filter((words) => !words.startsWith("Overruled, ")).map(terms.say),
  };
}

const COST_LABELS = {
  location: "place",
  type: "characteristic",
  extent: "size",
  view: "other view",
} as const;

function listCosts(lost: DebriefView["detail"]["found"][number]["lost"]): DebriefRow["costs"] {
  return (Object.keys(COST_LABELS) as (keyof typeof COST_LABELS)[])
    .map((part) => ({ what: COST_LABELS[part], points: lost[part] }))
    .filter(({ points }) => points >= 0.005)
    .sort((a, b) => b.points - a.points);
}

function listFound(terms: Terms): DebriefRow[] {
  const { result, detail } = terms.view;
  return result.found.flatMap((found) => {
    const mark = terms.plotted.get(found.mark);
    const of = terms.reference.get(found.reference);
    if (mark === undefined || of === undefined) return [];
    const read = detail.found.find((one) => one.mark === found.mark && one.reference === found.reference);
    const words = read?.words ?? [];
    return toRow(terms, mark, toMarkKey(mark.id), {
      outcome: "found",
      partnerKey: toReferenceKey(of.id),
      words:
        mark.characteristic === of.characteristic
          ? words
          : [`The reference’s mark here: ${toLabel(terms, of.characteristic)}.`, ...words],
      value: found.value,
      costs: read === undefined ? [] : listCosts(read.lost),
    });
  });
}

function listOverlooked(terms: Terms): DebriefRow[] {
  return terms.view.result.overlooked.flatMap((id) => {
    const mark = terms.reference.get(id);
    if (mark === undefined) return [];
    return toRow(terms, mark, toReferenceKey(id), {
      outcome: "overlooked",
      words: mark.decidesGrade === true ? ["It decides the grade."] : [],
    });
  });
}

/** For a stray on a decoy: which inclusion the stone repeats there. Nothing where the engine has said it. */
function sayEcho(terms: Terms, markId: string): string[] {
  const echo = terms.ways.find(({ mark }) => mark === markId);
  const of = terms.reference.get(echo?.reference ?? "");
  if (echo === undefined || echo.strength === null || of === undefined) return [];
  const callout = findReferenceCallout(terms.view, terms.callouts, of.id);
  const name = `${toLabel(terms, of.characteristic)}${callout === null ? "" : ` ${callout}`}`;
  const strength = `That image has a strength of ${echo.strength.toFixed(2)} of 1.`;
  return [`This stone repeats ${name} there, seen ${toFacetWords(echo.facets)}.`, strength];
}

function listStrays(terms: Terms): DebriefRow[] {
  return terms.view.result.strays.flatMap((stray) => {
    const mark = terms.plotted.get(stray.mark);
    if (mark === undefined) return [];
    return toRow(terms, mark, toMarkKey(mark.id), {
      outcome: "stray",
      cause: stray.cause,
      words: [...stray.because, ...sayEcho(terms, mark.id)],
    });
  });
}

function listSetAside(terms: Terms): DebriefRow[] {
  return terms.view.detail.setAside.flatMap(({ reference, mark: id }) => {
    const mark = terms.plotted.get(id);
    if (mark === undefined) return [];
    return toRow(terms, mark, toMarkKey(id), {
      outcome: "set-aside",
      partnerKey: toReferenceKey(reference),
      words: ["The reference has it as one that need not be plotted: it gives no points and takes none."],
    });
  });
}

/** Rewrites the engine's sentences about this plot by the numbers on its diagram. */
export function createDebriefWords(view: DebriefView): CalloutWords {
  return readTerms(view).say;
}

/**
 * All rows: found, overlooked, strays, set aside, in that order; within each as the result lists them. `ways` explain
 * the strays that are echoes.
 */
export function listDebriefRows(view: DebriefView, ways: readonly EchoWay[] = []): DebriefRow[] {
  const terms = readTerms(view, ways);
  return [...listFound(terms), ...listOverlooked(terms), ...listStrays(terms), ...listSetAside(terms)];
}
