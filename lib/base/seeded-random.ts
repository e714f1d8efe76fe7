/** A stream of pseudo-random numbers that a seed fixes: the same seed gives the same stream on every machine. */
export interface SeededRandom {
  /** Uniform in [0, 1). */
  next(): number;
  /** Uniform integer in [0, below); `below` must be a positive integer. */
  int(below: number): number;
  /** Normal with the given mean and standard deviation (Box and Muller 1958, polar-free form). */
  normal(mean?: number, sd?: number): number;
  /** True with the given probability. */
  chance(probability: number): boolean;
  /** One of the items; throws RangeError on an empty list. */
  pick<T>(items: readonly T[]): T;
  /** A new list with the items in random order (Fisher and Yates). */
  shuffle<T>(items: readonly T[]): T[];
}

/** 32-bit FNV-1a hash of a text: turns a name into a seed (Fowler, Noll and Vo; constants from memory). */
export function toSeed(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  }
  return hash >>> 0;
}

/**
 * A seeded generator (mulberry32, 32 bits of state: fit for demo data, tests and bootstrap intervals, not for
 * secrets). A text seed is hashed with `toSeed`.
 */
export function createSeededRandom(seed: number | string): SeededRandom {
  let state = (typeof seed === "string" ? toSeed(seed) : seed) >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const int = (below: number) => Math.floor(next() * below);
  return {
    next,
    int,
    normal: (mean = 0, sd = 1) =>
      mean + sd * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    chance: (probability) => next() < probability,
    pick: (items) => {
      const item = items[int(items.length)];
      if (item === undefined) throw new RangeError("pick: the list is empty");
      return item;
    },
    shuffle: (items) => {
      const out = [...items];
      for (let i = out.length - 1; i > 0; i -= 1) {
        const j = int(i + 1);
        [out[i], out[j]] = [out[j] as (typeof out)[number], out[i] as (typeof out)[number]];
      }
      return out;
    },
  };
}
