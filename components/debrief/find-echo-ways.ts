/** The way of the light behind each stray that is an echo. Pure. */

import { isAppError } from "@/lib/base/app-error";
import { type EchoSource, listEchoSources, type PredictedEcho } from "@/lib/editor/list-echoes";
import { getDistance, getMiddle } from "@/lib/editor/measure-shape";
import { traceEchoWay } from "@/lib/editor/trace-echo-way";
import { placeInclusion } from "@/lib/gem/place-inclusion";
import type { Point, View } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";
import { getSampleCentre } from "@/lib/plot/get-sample-centre";
import type { StrayDetail } from "@/lib/plot/score-result";
import type { DebriefView } from "@/lib/plot/student-view";

/** A stray that is an echo, and how it came about. */
export interface EchoWay {
  /** The stray. */
  readonly mark: string;
  readonly view: View;
  /** The reference mark that it repeats. */
  readonly reference: string;
  /** Names, the facet that is looked through first. */
  readonly facets: readonly string[];
  /** From where the echo is seen by way of the facets to the inclusion, in the view's frame; empty when not traced. */
  readonly way: readonly Point[];
  /** Given when the engine named a decoy and no inclusion: then the strength of the echo that falls there. */
  readonly strength: number | null;
}

const listSources = (view: DebriefView): EchoSource[] => {
  const inside = new Set(
    view.characteristics.filter((one) => one.class === "inside").map(({ name }) => name),
  );
  return listEchoSources(view.reference.marks, (name) => inside.has(name));
};

function traceDetail(view: DebriefView, solid: Solid, detail: StrayDetail): EchoWay["way"] {
  const source = listSources(view).find(({ id }) => id === detail.of);
  const [at] = detail.points;
  if (source === undefined || at === undefined) return [];
  const path = detail.facets.map((name) => solid.facets.findIndex((facet) => facet.name === name));
  const { refractiveIndex } = view.stone;
  try {
    const centre = getSampleCentre(source.shape);
    const inclusion = placeInclusion(solid, source.view, centre, source.depth, refractiveIndex);
    return traceEchoWay(solid, { view: detail.view, at, path }, inclusion, refractiveIndex) ?? [];
  } catch (thrown) {
    if (isAppError(thrown, "bad-input")) return [];
    throw thrown;
  }
}

/** The predicted echo nearest to a decoy, within the tolerance that was scored. */
function findEchoAtDecoy(
  { reference, near }: DebriefView,
  detail: StrayDetail,
  echoes: readonly PredictedEcho[],
): PredictedEcho | null {
  const decoy = reference.decoys.find(({ id }) => id === detail.of);
  if (decoy === undefined || reference.marks.some(({ id }) => id === detail.of)) return null;
  const middle = getMiddle(decoy.shape);
  const ranked = echoes
    .filter(({ view }) => view === decoy.view)
    .map((echo) => ({ echo, apart: getDistance(echo.at, middle) }))
    .sort((a, b) => a.apart - b.apart);
  const [nearest] = ranked;
  return nearest !== undefined && nearest.apart <= near ? nearest.echo : null;
}

/** The strays that lie on a decoy which was set for an echo: for these the reference's echoes are wanted. */
export function hasDecoyedEchoes({ result, detail, reference }: DebriefView): boolean {
  const decoys = new Set(reference.decoys.map(({ id }) => id));
  const echoes = new Set(result.strays.filter(({ cause }) => cause === "echo").map(({ mark }) => mark));
  return detail.strays.some(
    ({ mark, of, facets }) => echoes.has(mark) && facets.length === 0 && of !== null && decoys.has(of),
  );
}

/** What the reference's echoes are predicted from. */
export function toEchoInput(view: DebriefView) {
  const { cut, proportions, refractiveIndex } = view.stone;
  return { cut, proportions, refractiveIndex, sources: listSources(view) };
}

/**
 * The ways of the strays with the cause echo, in the order of the result. A stray on a decoy is explained by the
 * predicted echo that falls there, if one does; `echoes` may be empty while they are not known yet.
 */
export function findEchoWays(view: DebriefView, solid: Solid, echoes: readonly PredictedEcho[]): EchoWay[] {
  return view.result.strays.flatMap(({ mark, cause }) => {
    const detail = view.detail.strays.find((one) => one.mark === mark);
    if (cause !== "echo" || detail === undefined) return [];
    if (detail.facets.length > 0 && detail.of !== null) {
      const { of: reference, facets } = detail;
      const way = traceDetail(view, solid, detail);
      return { mark, view: detail.view, reference, facets, way, strength: null };
    }
    const echo = findEchoAtDecoy(view, detail, echoes);
    if (echo === null) return [];
    const { markId: reference, facets, way, strength } = echo;
    return { mark, view: echo.view, reference, facets, way, strength };
  });
}
