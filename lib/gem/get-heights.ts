import { getProportion, type Proportions } from "@/lib/gem/proportions";

/** The heights of a stone in girdle widths, from its proportions. */
export interface Heights {
  readonly halfGirdle: number;
  readonly crown: number;
  /** From the girdle's lower edge to the point where the pavilion mains would meet. */
  readonly pavilion: number;
}

/**
 * Heights from table, crown angle, pavilion angle and girdle. Crown height = (1 - t) / 2 * tan(c), pavilion
 * depth = tan(p) / 2 (check-values.md 2.1): for a round everywhere, for the other brilliants across the width,
 * at 3 and 9 o'clock, where their angles are taken.
 */
export function getHeights(proportions: Proportions): Heights {
  const degrees = Math.PI / 180;
  return {
    halfGirdle: getProportion(proportions, "girdlePct") / 200,
    crown:
      (0.5 - getProportion(proportions, "tablePct") / 200) *
      Math.tan(getProportion(proportions, "crownAngleDeg") * degrees),
    pavilion: 0.5 * Math.tan(getProportion(proportions, "pavilionAngleDeg") * degrees),
  };
}
