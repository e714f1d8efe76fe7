/** Ids for new marks: `m1-k3x`, `m2-k3x` …, never one that the plot has or had while this editor was open. */

const LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";

/** Three letters that tell this editor's marks from those of another that is open on the same plot. */
export function createIdSuffix(random: () => number = Math.random): string {
  return Array.from({ length: 3 }, () => LETTERS[Math.floor(random() * LETTERS.length)]).join("");
}

/**
 * A supply of ids. The count goes on from the highest `m` number among `taken` and never goes back, so an id that
 * was deleted does not come again. An empty suffix gives plain `m1`, `m2` …
 */
export function createIdSupply(taken: Iterable<string>, suffix: string): () => string {
  const known = new Set(taken);
  let count = 0;
  for (const id of known) {
    const match = /^m(\d{1,9})(?:-|$)/.exec(id);
    if (match !== null) count = Math.max(count, Number(match[1]));
  }
  return () => {
    for (;;) {
      count += 1;
      const id = suffix === "" ? `m${count}` : `m${count}-${suffix}`;
      if (!known.has(id)) {
        known.add(id);
        return id;
      }
    }
  };
}
