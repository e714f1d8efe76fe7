/** Counts by name: JSON objects whose keys are sorted, so that equal tallies are equal bytes. Names may be any text. */
export type Tally = Readonly<Record<string, number>>;

const byName = ([a]: readonly [string, unknown], [b]: readonly [string, unknown]) =>
  a < b ? -1 : a > b ? 1 : 0;

/** Merges two records key by key; where only one has the key, its value stands. Keys come out sorted. */
export function mergeRecords<T>(
  first: Readonly<Record<string, T>>,
  second: Readonly<Record<string, T>>,
  add: (a: T, b: T) => T,
): Readonly<Record<string, T>> {
  const merged = new Map(Object.entries(first));
  for (const [name, value] of Object.entries(second)) {
    const here = merged.get(name);
    merged.set(name, here === undefined ? value : add(here, value));
  }
  // fromEntries defines own properties, so that even the name `__proto__` is kept as a name.
  return Object.fromEntries([...merged].sort(byName));
}

/** Adds two tallies. Commutative and associative, the empty tally its zero. */
export function addTallies(first: Tally, second: Tally): Tally {
  return mergeRecords(first, second, (a, b) => a + b);
}

/** Counts names. None: the empty tally. */
export function tallyNames(names: Iterable<string>): Tally {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return addTallies(Object.fromEntries(counts), {});
}

/** The count of a name; 0 where the tally does not have it. */
export function getCount(tally: Tally, name: string): number {
  return Object.hasOwn(tally, name) ? (tally[name] ?? 0) : 0;
}

/** The sum of all counts. */
export function sumTally(tally: Tally): number {
  return Object.values(tally).reduce((sum, count) => sum + count, 0);
}
