/**
 * Places that several people mark, out of many places. Frames and units are the caller's: one view's frame, girdle widths.
 * Pure and deterministic: the order in which places come changes nothing.
 */

/** A place that somebody marked. */
export interface MarkedPlace {
  readonly view: "crown" | "pavilion";
  readonly at: readonly [x: number, y: number];
  /** Who marked it: places of one person count once, however many. */
  readonly by: string;
}

export interface PlaceCluster<P extends MarkedPlace> {
  readonly view: P["view"];
  /** The mean over people of each one's nearest place. */
  readonly at: readonly [x: number, y: number];
  /** Every place within the radius, sorted by person. */
  readonly places: readonly P[];
  /** How many people those are of. */
  readonly people: number;
  /** Root mean square distance of each person's nearest place from `at`. */
  readonly spread: number;
}

type Point = readonly [x: number, y: number];

const getDistance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Steps by which a centre is moved to the middle of what it gathers. */
const MOST_STEPS = 12;

function comparePlaces(a: MarkedPlace, b: MarkedPlace): number {
  if (a.view !== b.view) return a.view < b.view ? -1 : 1;
  if (a.at[0] !== b.at[0]) return a.at[0] - b.at[0];
  if (a.at[1] !== b.at[1]) return a.at[1] - b.at[1];
  return a.by < b.by ? -1 : a.by > b.by ? 1 : 0;
}

/** The places of one view in squares as wide as the radius, so that neighbours are found without looking at all. */
class PlaceGrid<P extends MarkedPlace> {
  readonly #cells = new Map<string, P[]>();

  constructor(
    places: readonly P[],
    readonly radius: number,
  ) {
    for (const place of places) {
      const key = this.#toKey(...this.#toCell(place.at));
      const cell = this.#cells.get(key) ?? [];
      this.#cells.set(key, cell);
      cell.push(place);
    }
  }

  #toCell([x, y]: Point): [number, number] {
    return [Math.floor(x / this.radius), Math.floor(y / this.radius)];
  }

  #toKey(column: number, row: number): string {
    return `${column} ${row}`;
  }

  /** Within `reach` squares' width of a point, in the order in which they were put in. */
  list(at: Point, gone: ReadonlySet<P>, widths = 1): P[] {
    const [column, row] = this.#toCell(at);
    const found: P[] = [];
    for (let i = column - widths; i <= column + widths; i += 1) {
      for (let j = row - widths; j <= row + widths; j += 1) {
        for (const place of this.#cells.get(this.#toKey(i, j)) ?? []) {
          if (!gone.has(place) && getDistance(place.at, at) <= this.radius * widths) found.push(place);
        }
      }
    }
    return found.sort(comparePlaces);
  }
}

const countPeople = (places: readonly MarkedPlace[]) => new Set(places.map(({ by }) => by)).size;

/** Each person's place that lies nearest to a point. */
function listNearest<P extends MarkedPlace>(places: readonly P[], at: Point): P[] {
  const nearest = new Map<string, P>();
  for (const place of places) {
    const known = nearest.get(place.by);
    if (known === undefined || getDistance(place.at, at) < getDistance(known.at, at)) {
      nearest.set(place.by, place);
    }
  }
  return [...nearest.values()];
}

function getMean(places: readonly MarkedPlace[]): Point {
  const sum = places.reduce<Point>(([x, y], { at }) => [x + at[0], y + at[1]], [0, 0]);
  return [sum[0] / places.length, sum[1] / places.length];
}

/** Moves a centre to the middle of what it gathers, as long as that gathers no fewer people. */
function gather<P extends MarkedPlace>(grid: PlaceGrid<P>, from: Point, gone: ReadonlySet<P>) {
  let at = from;
  let places = grid.list(at, gone);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const next = getMean(listNearest(places, at));
    const gathered = grid.list(next, gone);
    if (countPeople(gathered) < countPeople(places)) break;
    const isStill = getDistance(next, at) < 1e-9;
    [at, places] = [next, gathered];
    if (isStill) break;
  }
  return { at, places };
}

function toCluster<P extends MarkedPlace>(at: Point, places: readonly P[], view: P["view"]): PlaceCluster<P> {
  const nearest = listNearest(places, at);
  const squares = nearest.reduce((sum, place) => sum + getDistance(place.at, at) ** 2, 0);
  return {
    view,
    at,
    places: [...places].sort((a, b) => (a.by < b.by ? -1 : a.by > b.by ? 1 : comparePlaces(a, b))),
    people: nearest.length,
    spread: Math.sqrt(squares / nearest.length),
  };
}

/** The clusters of one view, sorted places in. */
function clusterView<P extends MarkedPlace>(places: readonly P[], radius: number, fewest: number) {
  const grid = new PlaceGrid(places, radius);
  const gone = new Set<P>();
  // What a place gathers only falls as others go, so an old count is an upper bound and is renewed when it comes up.
  const bounds = new Map(places.map((place) => [place, countPeople(grid.list(place.at, gone))]));
  const clusters: PlaceCluster<P>[] = [];
  for (;;) {
    let best: P | null = null;
    let most = fewest - 1;
    for (const [place, bound] of bounds) {
      if (gone.has(place) || bound <= most) continue;
      const people = countPeople(grid.list(place.at, gone));
      bounds.set(place, people);
      if (people > most) [best, most] = [place, people];
    }
    if (best === null) return clusters;
    const { at, places: own } = gather(grid, best.at, gone);
    clusters.push(toCluster(at, own, best.view));
    // The fringe of a place goes with it, or it would come up again beside itself.
    for (const place of [best, ...own, ...grid.list(at, gone, 2)]) gone.add(place);
  }
}

/**
 * Gathers places within `radius` of a centre into clusters of at least `fewest` people, the most people first, each place in
 * one cluster at most. Greedy: the centre that gathers the most people is taken, moved to their middle, and what lies within
 * twice the radius of it is set aside. People count, not marks: one who dots a place ten times counts once. Views are kept
 * apart. No places give no clusters. RangeError for a radius that is not above 0.
 */
export function clusterPlaces<P extends MarkedPlace>(
  places: readonly P[],
  { radius, fewest }: { readonly radius: number; readonly fewest: number },
): PlaceCluster<P>[] {
  if (!(radius > 0)) throw new RangeError(`clusterPlaces: a radius of ${radius}`);
  const sorted = [...places].sort(comparePlaces);
  return (["crown", "pavilion"] as const)
    .flatMap((view) =>
      clusterView(
        sorted.filter((place) => place.view === view),
        radius,
        Math.max(1, fewest),
      ),
    )
    .sort((a, b) => b.people - a.people || comparePlaces({ ...a, by: "" }, { ...b, by: "" }));
}
