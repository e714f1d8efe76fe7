import { createHash } from "node:crypto";

/**
 * Remembers what was worked out of sums by the stamps of the sums, the last so many; beyond, whatever was asked for longest ago
 * is forgotten.
 */
export class KeptByStamps<T> {
  readonly #kept = new Map<string, T>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  /** What was kept under a name and these stamps, or what `make` gives, kept from now on. */
  async get(
    name: string,
    stamps: ReadonlyMap<string, string>,
    make: () => Promise<T>,
  ): Promise<{ value: T; key: string }> {
    const hash = createHash("sha256").update(name);
    for (const [id, stamp] of [...stamps].sort(([a], [b]) => (a < b ? -1 : 1)))
      hash.update(`\n${id} ${stamp}`);
    const key = hash.digest("base64");
    const value = this.#kept.get(key) ?? (await make());
    this.#kept.delete(key);
    this.#kept.set(key, value);
    if (this.#kept.size > this.#most) this.#kept.delete(this.#kept.keys().next().value ?? "");
    return { value, key };
  }
}
