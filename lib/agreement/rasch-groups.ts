import type { PersonAnswers } from "@/lib/agreement/rasch-responses";

/** Persons who sat the same comparable items and got the same number right: all that the conditional likelihood needs. */
export interface RaschGroup {
  /** Places among the comparable items, ascending. */
  readonly items: readonly number[];
  readonly score: number;
  readonly persons: number;
}

export interface RaschGrouping {
  readonly groups: readonly RaschGroup[];
  /** `ofPerson[v]`: the place of the person's group; null where no comparable item was sat. */
  readonly ofPerson: readonly (number | null)[];
  /** `right[i]`: how many persons with a score within range got comparable item i right. */
  readonly right: Float64Array;
}

/** Groups persons by the comparable items that they sat and by their score on them. */
export function groupPersons(
  answers: readonly PersonAnswers[],
  comparable: readonly number[],
): RaschGrouping {
  const places = new Map(comparable.map((item, place) => [item, place]));
  const toComparable = (items: readonly number[]) =>
    items.flatMap((item) => {
      const place = places.get(item);
      return place === undefined ? [] : [place];
    });
  const right = new Float64Array(comparable.length);
  const groups: { items: number[]; score: number; persons: number }[] = [];
  const byKey = new Map<string, number>();
  const ofPerson = answers.map((own) => {
    const rights = toComparable(own.right);
    const items = [...rights, ...toComparable(own.wrong)].sort((a, b) => a - b);
    if (items.length === 0) return null;
    if (rights.length < items.length) for (const place of rights) right[place] = (right[place] ?? 0) + 1;
    const key = `${rights.length}:${items.join()}`;
    const place = byKey.get(key) ?? groups.length;
    byKey.set(key, place);
    const group = groups[place] ?? { items, score: rights.length, persons: 0 };
    groups[place] = group;
    group.persons += 1;
    return place;
  });
  return { groups, ofPerson, right };
}
