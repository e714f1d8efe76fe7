import { isInsideOutline } from "@/lib/gem/is-inside-outline";
import type { View } from "@/lib/gem/point";
import type { PreparedReference } from "@/lib/scoring/prepare-reference";

const GRID = 40;
const known = new WeakMap<PreparedReference, Map<string, number>>();

function measure(prepared: PreparedReference, view: View, near: number): number {
  const { outline } = prepared.solid;
  const [xs, ys] = [outline.map(([x]) => Math.abs(x)), outline.map(([, y]) => Math.abs(y))];
  const [width, height] = [Math.max(0, ...xs), Math.max(0, ...ys)];
  let [inside, covered] = [0, 0];
  for (let i = 0; i < GRID; i += 1) {
    for (let j = 0; j < GRID; j += 1) {
      const x = width * ((2 * i + 1) / GRID - 1);
      const y = height * ((2 * j + 1) / GRID - 1);
      if (!isInsideOutline(prepared.solid, view, [x, y], 0)) continue;
      inside += 1;
      if (prepared.echoes[view].some(({ at }) => Math.hypot(at[0] - x, at[1] - y) <= near)) covered += 1;
    }
  }
  return inside === 0 ? 0 : covered / inside;
}

/**
 * The share of a view, 0…1, that lies within `near` (girdle widths) of a predicted image: how likely a dot set anywhere
 * would be taken for an echo. Counted on a grid of 40 by 40; remembered with the reference.
 */
export function measureEchoCover(prepared: PreparedReference, view: View, near: number): number {
  const kept = known.get(prepared) ?? new Map<string, number>();
  known.set(prepared, kept);
  const key = `${view} ${near}`;
  let share = kept.get(key);
  if (share === undefined) {
    share = measure(prepared, view, near);
    kept.set(key, share);
  }
  return share;
}
