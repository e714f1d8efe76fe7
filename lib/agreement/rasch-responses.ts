/** One answer: whether a person got an item right (a student found a reference mark). */
export interface RaschResponse {
  readonly person: string;
  readonly item: string;
  readonly right: boolean;
}

/** The answers of one person, by place in the list of items. */
export interface PersonAnswers {
  readonly right: readonly number[];
  readonly wrong: readonly number[];
}

/** Answers sorted by person. Persons and items stand in order of first appearance. */
export interface RaschTable {
  readonly items: readonly string[];
  readonly persons: readonly string[];
  readonly answers: readonly PersonAnswers[];
}

function toPlace(name: string, places: Map<string, number>): number {
  const place = places.get(name) ?? places.size;
  places.set(name, place);
  return place;
}

/** Sorts responses by person. None: an empty table. RangeError when a person answers an item twice. */
export function buildRaschTable(responses: Iterable<RaschResponse>): RaschTable {
  const items = new Map<string, number>();
  const persons = new Map<string, number>();
  const answers: { right: number[]; wrong: number[]; seen: Set<number> }[] = [];
  for (const { person, item, right } of responses) {
    const place = toPlace(item, items);
    const row = toPlace(person, persons);
    const own = answers[row] ?? { right: [], wrong: [], seen: new Set<number>() };
    answers[row] = own;
    if (own.seen.has(place)) throw new RangeError(`buildRaschTable: "${person}" answers "${item}" twice`);
    own.seen.add(place);
    (right ? own.right : own.wrong).push(place);
  }
  return {
    items: [...items.keys()],
    persons: [...persons.keys()],
    answers: answers.map(({ right, wrong }) => ({ right, wrong })),
  };
}

/** Places that can be reached from `start` along the table of links, `start` among them. */
function listReached(links: Uint8Array, size: number, start: number, backwards: boolean): Uint8Array {
  const reached = new Uint8Array(size);
  const open = [start];
  reached[start] = 1;
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    for (let to = 0; to < size; to += 1) {
      const link = backwards ? links[to * size + at] : links[at * size + to];
      if (link === 1 && reached[to] === 0) {
        reached[to] = 1;
        open.push(to);
      }
    }
  }
  return reached;
}

/**
 * The places of the items that can be compared with one another: the largest set in which each item leads to each other
 * over persons who got the first right and the second wrong. Only within such a set has the conditional likelihood a
 * finite maximum, and one only (Fischer 1981, Psychometrika 46, 59-77). Items that all or none got right are in no such
 * set. Of two equally large sets the one with the earlier item. Empty when there is none of two or more.
 */
export function listComparableItems(table: RaschTable): number[] {
  const size = table.items.length;
  const links = new Uint8Array(size * size);
  for (const { right, wrong } of table.answers) {
    for (const from of right) for (const to of wrong) links[from * size + to] = 1;
  }
  const settled = new Uint8Array(size);
  let best: number[] = [];
  for (let start = 0; start < size; start += 1) {
    if (settled[start] === 1) continue;
    const forwards = listReached(links, size, start, false);
    const backwards = listReached(links, size, start, true);
    const both = table.items.flatMap((_, i) => (forwards[i] === 1 && backwards[i] === 1 ? [i] : []));
    for (const i of both) settled[i] = 1;
    if (both.length > best.length) best = both;
  }
  return best.length > 1 ? best : [];
}
