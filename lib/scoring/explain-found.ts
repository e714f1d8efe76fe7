/** What a found mark earned and what its location, type, extent and view cost, in points and in words (SPEC 7.2). */
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { FoundDetail, FoundResult } from "@/lib/plot/score-result";
import type { Exhibit } from "@/lib/scoring/exhibit";
import type { Merge } from "@/lib/scoring/find-merges";
import type { Pair } from "@/lib/scoring/list-pairs";
import { nameDistance, nameNumber } from "@/lib/scoring/name-things";

type Lost = FoundDetail["lost"];

/** "costs 2.10 points", "no cost" */
function nameCost(points: number): string {
  return points < 0.005 ? "no cost" : `costs ${nameNumber(points)} points`;
}

/** Ratings to nine decimals: what lies beyond is rounding noise. */
const roundRating = (rating: number) => Math.round(rating * 1e9) / 1e9;
const roundPoints = (points: number) => Math.round(points * 100) / 100 + 0;

/** What each part of the value cost, in points of the total; together what is missing from the full worth. */
function splitLoss(
  { location, type, extent, value, inOtherView }: Pair,
  worth: number,
  { rubric }: Exhibit,
): Lost {
  const { parts } = rubric;
  const atOwnView = location * (parts.location + parts.type * type + parts.extent * extent);
  return {
    location: worth * (1 - location),
    type: worth * location * parts.type * (1 - type),
    extent: worth * location * parts.extent * (1 - extent),
    view: inOtherView ? worth * (atOwnView - value) : 0,
  };
}

function nameType(reference: string, plotted: string, type: number, cost: number): string {
  if (reference === plotted) return `The characteristic is right: ${toCharacteristicLabel(reference)}.`;
  const verdict = type > 0 ? "alike, half right" : "not alike";
  return `Plotted as ${toCharacteristicLabel(plotted)}, it is a ${toCharacteristicLabel(reference)} (${verdict}): ${nameCost(cost)}.`;
}

function explainPair(exhibit: Exhibit, pair: Pair, lost: Lost): string[] {
  const { prepared, laid, rubric, widthMm } = exhibit;
  const [model, plotted] = [prepared.marks[pair.reference], laid[pair.plotted]];
  if (model === undefined || plotted === undefined) return [];
  const ruling = exhibit.rulings.together.get(pair.reference);
  const away = pair.distance < 0.0005 ? "on the place" : `${nameDistance(pair.distance, widthMm)} off`;
  const within = pair.location === 1 ? `within ${rubric.near}, no cost` : nameCost(lost.location);
  const counted = ruling?.place === "full" ? "counted as in place" : "counted as half in place";
  const isGiven = ruling !== undefined && ruling.place !== "measured";
  const words = [
    ...(ruling === undefined ? [] : [`Overruled, it is this mark: ${ruling.reason}`]),
    `It lies ${away}: ${isGiven ? `${counted}, ${nameCost(lost.location)}` : within}.`,
    nameType(model.mark.characteristic, plotted.mark.characteristic, pair.type, lost.type),
  ];
  if (lost.extent >= 0.005) {
    const [is, was] = [model.geometry.extent, plotted.geometry.extent];
    words.push(
      `Drawn ${nameDistance(was, widthMm)} across against ${nameDistance(is, widthMm)}: ${nameCost(lost.extent)}.`,
    );
  }
  if (pair.inOtherView) {
    words.push(
      `Drawn in the ${plotted.mark.view} view, where its image shows; the reference has it in the ${model.mark.view} view: ${nameCost(lost.view)}.`,
    );
  }
  return words;
}

/** The result and the detail of a mark that was matched one to one. */
export function explainMatched(exhibit: Exhibit, pair: Pair): { result: FoundResult; detail: FoundDetail } {
  const { prepared, laid, widthMm } = exhibit;
  const reference = prepared.marks[pair.reference]?.mark.id ?? "";
  const mark = laid[pair.plotted]?.mark.id ?? "";
  const lost = splitLoss(pair, getWorth(exhibit, pair.reference), exhibit);
  return {
    result: {
      reference,
      mark,
      value: roundRating(pair.value),
      location: roundRating(pair.location),
      type: pair.type,
      extent: roundRating(pair.extent),
    },
    detail: {
      reference,
      mark,
      how: pair.inOtherView ? "other-view" : "matched",
      distance: pair.distance,
      distanceMm: widthMm === null ? null : pair.distance * widthMm,
      lost: {
        location: roundPoints(lost.location),
        type: roundPoints(lost.type),
        extent: roundPoints(lost.extent),
        view: roundPoints(lost.view),
      },
      words: explainPair(exhibit, pair, lost),
    },
  };
}

/** The result and the detail of a mark that an outline round several found. */
export function explainMerged(exhibit: Exhibit, merge: Merge): { result: FoundResult; detail: FoundDetail } {
  const { prepared, laid, rubric, matching } = exhibit;
  const [model, plotted] = [prepared.marks[merge.reference], laid[merge.plotted]];
  const ids = { reference: model?.mark.id ?? "", mark: plotted?.mark.id ?? "" };
  const worth = getWorth(exhibit, merge.reference);
  const count = matching.merges.filter((other) => other.plotted === merge.plotted).length;
  const lost = { location: worth * (1 - rubric.merged), type: worth * rubric.merged * (1 - merge.type) };
  return {
    result: { ...ids, value: roundRating(merge.value), location: rubric.merged, type: merge.type, extent: 0 },
    detail: {
      ...ids,
      how: "merged",
      distance: null,
      distanceMm: null,
      lost: { location: roundPoints(lost.location), type: roundPoints(lost.type), extent: 0, view: 0 },
      words: [
        `One outline encloses ${count} marks of the reference, this one among them: location counts ${rubric.merged} and extent nothing (${nameCost(lost.location)}).`,
        nameType(model?.mark.characteristic ?? "", plotted?.mark.characteristic ?? "", merge.type, lost.type),
      ],
    },
  };
}

/** What a reference mark is worth in points of the total when it is found in full; 0 for an optional one. */
export function getWorth(
  { prepared, rubric }: Pick<Exhibit, "prepared" | "rubric">,
  reference: number,
): number {
  const model = prepared.marks[reference];
  if (model === undefined || model.optional || prepared.weightSum === 0) return 0;
  return (rubric.shares.plot * model.weight) / prepared.weightSum;
}
