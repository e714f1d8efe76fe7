/** The stones of an exercise as one student meets them: in which order, and under which names. Pure. */
import { toSeed } from "@/lib/base/seeded-random";

/** A stone of an exercise. */
export interface Place {
  readonly id: string;
  readonly position: number;
  readonly isRetake: boolean;
  /** Later than the exercise; null: with it. */
  readonly opensAt: Date | null;
  readonly stone: { readonly label: string };
}

/**
 * The student's stones in their order, each with the name that the student is told: its label; or, where labels are
 * hidden, "Stone 1, 2 …" in an order that is the student's own and always the same, those that open later after
 * the others. Stones for retakes come last.
 * Where labels are hidden, the names are only right when all of the student's stones are given.
 */
export function arrangeOwnPlaces<P extends Place>(
  places: readonly P[],
  areLabelsHidden: boolean,
  studentId: string,
): { readonly place: P; readonly label: string }[] {
  const keyOf = (place: P) => (areLabelsHidden ? toSeed(`${studentId} ${place.id}`) : place.position);
  // Else a stone of next week could stand first, and hold up all others where they are sat in order.
  const openingOf = ({ opensAt }: Place) => (areLabelsHidden ? (opensAt?.getTime() ?? 0) : 0);
  const sorted = [...places].sort(
    (a, b) =>
      Number(a.isRetake) - Number(b.isRetake) ||
      (a.isRetake ? a.position - b.position : openingOf(a) - openingOf(b) || keyOf(a) - keyOf(b)) ||
      (a.id < b.id ? -1 : 1),
  );
  return sorted.map((place, index) => ({
    place,
    label: areLabelsHidden ? `Stone ${index + 1}` : place.stone.label,
  }));
}
