/** Predicted echoes as an overlay and as rows, and the decoys that they become. Pure. */
import type { LayerLink, OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import { isDecoy, type ReferenceDrawing } from "@/lib/editor/drawn-mark";
import type { PredictedEcho } from "@/lib/editor/list-echoes";
import { getDistance, getMiddle } from "@/lib/editor/measure-shape";
import { locatePoint } from "@/lib/gem/locate-point";
import type { Solid } from "@/lib/gem/solid";
import type { Decoy } from "@/lib/plot/mark";

/** A decoy this near to an echo (girdle widths) stands for it: far below the width of a dot. */
const TAKEN_WITHIN = 0.002;

export interface EchoRow {
  readonly echo: PredictedEcho;
  /** "echo of mark 2, 41%, table, towards 7 o'clock, seen through star 3 by pavilion main 5" */
  readonly words: string;
  /** The decoy that stands for it, if one does, and its number. */
  readonly decoy: { readonly id: string; readonly number: number } | null;
}

/** "through star 3 by pavilion main 5, then bezel 2"; of a single facet that it is refraction alone. */
export function toFacetWords(facets: readonly string[]): string {
  const [through, ...mirrors] = facets;
  return mirrors.length === 0
    ? `through ${through}, refracted and not reflected`
    : `through ${through} by ${mirrors.join(", then ")}`;
}

function toWords({ echo, number, solid }: { echo: PredictedEcho; number: number; solid: Solid }): string {
  const what = echo.bounces === 0 ? `mark ${number} a second time` : `echo of mark ${number}`;
  const { words: place } = locatePoint(solid, echo.view, echo.at);
  return `${what}, ${Math.round(100 * echo.strength)}%, ${place}, seen ${toFacetWords(echo.facets)}`;
}

function findDecoyAt({ view, at }: PredictedEcho, drawings: readonly ReferenceDrawing[]): EchoRow["decoy"] {
  const index = drawings.findIndex(
    (drawing) =>
      isDecoy(drawing) &&
      drawing.cause === "echo" &&
      drawing.view === view &&
      getDistance(getMiddle(drawing.shape), at) <= TAKEN_WITHIN,
  );
  const decoy = drawings[index];
  return decoy === undefined ? null : { id: decoy.id, number: index + 1 };
}

/** Fewer reflections first; what refraction alone repeats comes last. */
const rankBounces = ({ bounces }: PredictedEcho) => (bounces === 0 ? Number.MAX_SAFE_INTEGER : bounces);

/**
 * The echoes as rows, the strongest first, of equals those with fewer reflections. `drawings` are numbered from 1 in their order, as the editor numbers them; an
 * echo of a mark that is not among them is left out. `ofId`: of this mark alone.
 */
export function listEchoRows(
  echoes: readonly PredictedEcho[],
  drawings: readonly ReferenceDrawing[],
  solid: Solid,
  ofId: string | null = null,
): EchoRow[] {
  const numbers = new Map(drawings.map(({ id }, index) => [id, index + 1]));
  return echoes
    .filter(({ markId }) => ofId === null || markId === ofId)
    .flatMap((echo) => {
      const number = numbers.get(echo.markId);
      if (number === undefined) return [];
      return { echo, words: toWords({ echo, number, solid }), decoy: findDecoyAt(echo, drawings) };
    })
    .sort((a, b) => b.echo.strength - a.echo.strength || rankBounces(a.echo) - rankBounces(b.echo));
}

/** The way of the light behind an echo, as lines of a view. */
export function linkWay({ key, view, way }: PredictedEcho): LayerLink[] {
  return way.slice(1).map((to, index): LayerLink => {
    const from = way[index] ?? to;
    return { key: `${key}:${index}`, view, style: "decoy", from, to };
  });
}

/** The rows' echoes to lay over the diagram, but those that are decoys already. */
export function buildEchoLayer(rows: readonly EchoRow[]): OverlayLayer {
  return {
    id: "echoes",
    label: "Predicted echoes",
    items: rows
      .filter(({ decoy }) => decoy === null)
      .map(({ echo: { key, view, at, strength }, words }) => ({
        key,
        view,
        shape: { kind: "dot", at: [at[0], at[1]] },
        style: "decoy",
        callout: null,
        strength,
        words,
      })),
  };
}

/** Coordinates of a drawing are kept to this many (lib/editor/SPEC.md 5.4). */
const KEPT = 1e5;

/** The decoy that an echo becomes. */
export function toEchoDecoy({ view, at: [x, y] }: PredictedEcho): Omit<Decoy, "id"> {
  const at: [number, number] = [Math.round(x * KEPT) / KEPT, Math.round(y * KEPT) / KEPT];
  return { view, cause: "echo", shape: { kind: "dot", at } };
}
