import type { SeededRandom } from "@/lib/base/seeded-random";

/**
 * A Poisson count with the given mean, by multiplying uniforms (Knuth, The Art of Computer Programming 2, 3.4.1; from
 * memory). 0 for a mean of 0; meant for small means.
 */
export function drawCount(random: SeededRandom, mean: number): number {
  const limit = Math.exp(-mean);
  let count = 0;
  for (let product = random.next(); product > limit; product *= random.next()) count += 1;
  return count;
}
