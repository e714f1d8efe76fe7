import { getCount, type Tally } from "@/lib/agreement/tally";

/** A labelled matrix: `counts[i][j]` is how often what is `rows[i]` was taken for `columns[j]`. */
export interface ConfusionTable {
  readonly rows: readonly string[];
  readonly columns: readonly string[];
  readonly counts: readonly (readonly number[])[];
}

/**
 * Lays nested counts, `confusion[reference][plotted]`, out on a grade scale. Every grade of the scale has its row and its
 * column. RangeError for a count whose grade the scale does not have, so that none is lost.
 */
export function toGradeConfusion(
  confusion: Readonly<Record<string, Tally>>,
  scale: readonly string[],
): ConfusionTable {
  const known = new Set(scale);
  for (const [reference, tally] of Object.entries(confusion)) {
    const unknown = [reference, ...Object.keys(tally)].find((grade) => !known.has(grade));
    if (unknown !== undefined) throw new RangeError(`toGradeConfusion: "${unknown}" is not on the scale`);
  }
  const counts = scale.map((reference) => {
    const tally = Object.hasOwn(confusion, reference) ? (confusion[reference] ?? {}) : {};
    return scale.map((plotted) => getCount(tally, plotted));
  });
  return { rows: scale, columns: scale, counts };
}

/** The last column of the table of characteristics: reference marks that were not found. */
export const OVERLOOKED_COLUMN = "overlooked";

interface CharacteristicRow {
  readonly reference: number;
  readonly found: number;
  readonly takenFor: Tally;
}

/**
 * The confusion of characteristics: a row for each characteristic that the references have, a column for each that found
 * marks were plotted as, and one last column for those overlooked. Rows and columns in the order of `order`, names that
 * it lacks after them by the alphabet. No count: no row, and only the last column.
 */
export function toCharacteristicConfusion(
  characteristics: Readonly<Record<string, CharacteristicRow>>,
  order: readonly string[] = [],
): ConfusionTable {
  const places = new Map(order.map((name, place) => [name, place]));
  const arrange = (names: Iterable<string>) =>
    [...new Set(names)].sort((a, b) => {
      const byOrder = (places.get(a) ?? order.length) - (places.get(b) ?? order.length);
      return byOrder !== 0 ? byOrder : a < b ? -1 : 1;
    });
  const present = Object.entries(characteristics).filter(([, counts]) => counts.reference > 0);
  const byName = new Map(present);
  const rows = arrange(byName.keys());
  const columns = arrange(present.flatMap(([, counts]) => Object.keys(counts.takenFor)));
  const counts = rows.map((name) => {
    const row = byName.get(name);
    if (!row) return [];
    return [...columns.map((column) => getCount(row.takenFor, column)), row.reference - row.found];
  });
  return { rows, columns: [...columns, OVERLOOKED_COLUMN], counts };
}
