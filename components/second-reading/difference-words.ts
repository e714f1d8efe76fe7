/** What two readings differ in, in words and as overlays. Pure. */
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import type { LayerItem, OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import { getMiddle } from "@/lib/editor/measure-shape";
import { locatePoint } from "@/lib/gem/locate-point";
import type { Solid } from "@/lib/gem/solid";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { Choice, ReadingDifference } from "@/lib/plot/second-reading";

type Place = NonNullable<ReadingDifference["first"]>;

const getName = (place: Place) =>
  "cause" in place ? `decoy (${place.cause})` : toCharacteristicLabel(place.characteristic);

/** The difference as a sentence. */
export function toDifferenceWords(
  { first, second, grades, distance, kind }: ReadingDifference,
  solid: Solid,
): string {
  if (grades !== null) {
    const say = (grade: string | null) => grade ?? "not given";
    return `${PROPERTY_LABELS[grades.property]}: ${say(grades.first)} in the reference, ${say(grades.second)} by the second reader`;
  }
  const place = first ?? second;
  if (place === null) return "";
  const where = `${place.view} view, ${locatePoint(solid, place.view, getMiddle(place.shape)).words}`;
  if (kind === "pair" && first !== null && second !== null) {
    const apart =
      distance === null ? "drawn in different views" : `${distance.toFixed(3)} girdle widths apart`;
    const names =
      getName(first) === getName(second)
        ? `both ${getName(first)}`
        : `${getName(first)}, by the second ${getName(second)}`;
    return `${names}; ${apart}; ${where}`;
  }
  return `${getName(place)}, ${first === null ? "only by the second reader" : "only in the reference"}; ${where}`;
}

/** What a choice does to this difference. */
export function toChoiceLabel({ kind }: ReadingDifference, choice: Choice): string {
  if (choice === "first") return kind.endsWith("only-second") ? "Leave out" : "Keep first";
  if (choice === "second") return kind.endsWith("only-first") ? "Take away" : "Take second";
  return kind === "pair" ? "Merge halfway" : "Merge as optional";
}

function draw(differences: readonly ReadingDifference[], side: "first" | "second"): LayerItem[] {
  return differences.flatMap((difference, index): LayerItem[] => {
    const place = difference[side];
    if (place === null) return [];
    return [
      {
        key: side === "first" || difference.first === null ? difference.key : `second:${difference.key}`,
        view: place.view,
        shape: place.shape,
        style: "cause" in place ? "decoy" : side === "first" ? "inside" : "surface",
        callout: side === "second" && difference.first !== null ? null : String(index + 1),
        side: side === "first" ? "reference" : "plotted",
        words: `${getName(place)}, ${side === "first" ? "reference" : "second reader"}`,
      },
    ];
  });
}

/** Both readings over one another: the reference wider and solid, the second reader's finer and dashed. */
export function buildReadingLayers(differences: readonly ReadingDifference[]): OverlayLayer[] {
  const links = differences.flatMap(({ key, first, second }) => {
    if (first === null || second === null || first.view !== second.view) return [];
    const [from, to] = [getMiddle(first.shape), getMiddle(second.shape)];
    return [{ key: `link:${key}`, view: first.view, style: "set-aside" as const, from, to }];
  });
  return [
    { id: "first", label: "Reference", items: draw(differences, "first") },
    { id: "second", label: "Second reader", items: draw(differences, "second"), links },
  ];
}
