import { estimateRaschAbility } from "@/lib/agreement/rasch-ability";
import { groupPersons, type RaschGroup } from "@/lib/agreement/rasch-groups";
import { fitRaschItems, type RaschItemFit } from "@/lib/agreement/rasch-items";
import {
  buildRaschTable,
  listComparableItems,
  type RaschResponse,
  type RaschTable,
} from "@/lib/agreement/rasch-responses";
import {
  type Estimate,
  NORMAL_975,
  type Quantity,
  toUndefined,
  type UndefinedStatistic,
} from "@/lib/agreement/statistic";

/** All right or all wrong: the place lies beyond the range that the data can measure. */
export interface BeyondRange extends UndefinedStatistic {
  readonly beyond: "above" | "below";
}

/** A place on the common scale, in logits. */
export type RaschPlace = Estimate | BeyondRange;

export interface RaschItem {
  readonly item: string;
  readonly seen: number;
  readonly right: number;
  /** High for an item that is easily got right. */
  readonly easiness: RaschPlace;
}

export interface RaschPerson {
  readonly person: string;
  readonly seen: number;
  readonly right: number;
  readonly ability: RaschPlace;
}

export interface RaschFit {
  readonly method: "conditional maximum likelihood";
  /** In order of first appearance. */
  readonly items: readonly RaschItem[];
  /** In order of first appearance. */
  readonly persons: readonly RaschPerson[];
  readonly logLikelihood: Quantity;
  readonly iterations: number;
  /** Of the items: exact, or for long tests by a form that they tend to (`addConditionalInformation`). */
  readonly itemErrors: "exact" | "approximate";
}

function toPlaceEstimate(value: number, standardError: number): Estimate {
  const half = NORMAL_975 * standardError;
  return { value, standardError, low: value - half, high: value + half };
}

/** Why an item that is not comparable has no place. */
function explainItem(right: number, seen: number): RaschPlace {
  if (right === seen) return { beyond: "above", undefined: "beyond range: everyone who saw it got it right" };
  if (right === 0) return { beyond: "below", undefined: "beyond range: nobody got it right" };
  return toUndefined(
    "too few persons got this right and others wrong, or others right and this wrong, to compare it",
  );
}

function describeItems(
  table: RaschTable,
  comparable: readonly number[],
  fit: RaschItemFit | null,
): RaschItem[] {
  const right = new Array<number>(table.items.length).fill(0);
  const seen = new Array<number>(table.items.length).fill(0);
  for (const answers of table.answers) {
    for (const i of answers.right) right[i] = (right[i] ?? 0) + 1;
    for (const i of [...answers.right, ...answers.wrong]) seen[i] = (seen[i] ?? 0) + 1;
  }
  const places = new Map(comparable.map((item, place) => [item, place]));
  return table.items.map((item, i) => {
    const place = places.get(i);
    const counts = { item, seen: seen[i] ?? 0, right: right[i] ?? 0 };
    const easiness =
      fit && place !== undefined
        ? toPlaceEstimate(fit.easiness[place] ?? 0, fit.standardErrors[place] ?? 0)
        : explainItem(counts.right, counts.seen);
    return { ...counts, easiness };
  });
}

/** The ability of everyone in a group, from the comparable items that they sat. */
function placeGroup({ items, score }: RaschGroup, fit: RaschItemFit): RaschPlace {
  if (score === 0) return { beyond: "below", undefined: "beyond range: all wrong" };
  if (score === items.length) return { beyond: "above", undefined: "beyond range: all right" };
  const easiness = Float64Array.from(items, (item) => fit.easiness[item] ?? 0);
  const { ability, information } = estimateRaschAbility(easiness, score);
  return toPlaceEstimate(ability, 1 / Math.sqrt(information));
}

/** Without any comparable items a person can still be known to lie beyond range. */
function explainPerson(right: number, wrong: number): RaschPlace {
  if (wrong === 0) return { beyond: "above", undefined: "beyond range: all right" };
  if (right === 0) return { beyond: "below", undefined: "beyond range: all wrong" };
  return toUndefined("none of the items sat can be compared with the others");
}

/**
 * The Rasch model (Rasch 1960) for persons who sat different items: P(right) = 1 / (1 + exp(-(ability + easiness))). For
 * plotting, a person is a student, an item a reference mark, and right is found. Items by conditional maximum likelihood
 * (see `fitRaschItems`), easiness summing to 0; abilities by maximum likelihood with the items held fixed (see
 * `estimateRaschAbility`), so their errors leave out the items' own. Both on one scale, in logits; higher is abler, or
 * easier. Extreme scores have no finite estimate and are reported as beyond range; items that no chain of persons links
 * to the others are undefined, and answers to them tell nothing about the persons. z intervals.
 *
 * No response: no item and no person. RangeError when a person answers an item twice.
 */
export function fitRasch(responses: Iterable<RaschResponse>): RaschFit {
  const table = buildRaschTable(responses);
  const comparable = listComparableItems(table);
  const grouping = groupPersons(table.answers, comparable);
  const fit = comparable.length > 0 ? fitRaschItems(grouping) : null;
  const placed = fit ? grouping.groups.map((group) => placeGroup(group, fit)) : [];
  const persons = table.persons.map((person, v): RaschPerson => {
    const { right = [], wrong = [] } = table.answers[v] ?? {};
    const group = grouping.ofPerson[v] ?? null;
    const ability = group === null ? undefined : placed[group];
    return {
      person,
      seen: right.length + wrong.length,
      right: right.length,
      ability: ability ?? explainPerson(right.length, wrong.length),
    };
  });
  return {
    method: "conditional maximum likelihood",
    items: describeItems(table, comparable, fit),
    persons,
    logLikelihood: fit ? { value: fit.logLikelihood } : toUndefined("no two items can be compared"),
    iterations: fit?.iterations ?? 0,
    itemErrors: fit?.isExact === false ? "approximate" : "exact",
  };
}
