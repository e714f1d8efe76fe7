/**
 * Clarity characteristics in the trade's terms: what may be drawn, whether it lies inside the stone or on its
 * surface, and which are easily taken for one another.
 *
 * Terms and classes: ISO 24016 and GB/T 16554-2017 as listed in the trade; borderline classes (chip, bruise,
 * cavity, bearding, knot, indented natural reach the surface but are counted as inside) are common practice, no
 * source. The definitions are our own words. The likeness pairs are this project's own teaching choice.
 */
import { z } from "zod";

export const CHARACTERISTIC_CLASSES = ["inside", "surface"] as const;
export type CharacteristicClass = (typeof CHARACTERISTIC_CLASSES)[number];

/** A characteristic with everything that the screens and the engine need of it. */
export interface Characteristic {
  /** Kebab-case English term: the key in files, `twinning-wisp`. */
  readonly name: string;
  /** The term as it is read: `twinning wisp`. */
  readonly label: string;
  readonly class: CharacteristicClass;
  readonly definition: string;
  /** Names of the characteristics that are half right in place of this one. Symmetric. */
  readonly like: readonly string[];
}

type Row = readonly [name: string, characteristicClass: CharacteristicClass, definition: string];

const ROWS: readonly Row[] = [
  ["pinpoint", "inside", "A solid speck so small that through the loupe it is only a dot."],
  ["crystal", "inside", "A mineral or diamond crystal large enough to show an outline, light or dark."],
  ["needle", "inside", "A crystal much longer than it is wide."],
  ["cloud", "inside", "Many pinpoints so close together that they read as one hazy patch."],
  ["feather", "inside", "Any break in the stone, flat or curved, with a feathery or glassy look."],
  ["cleavage", "inside", "A flat break along one of the stone's cleavage planes."],
  ["bearding", "inside", "A row of hair-fine feathers that run inward from the girdle."],
  ["knot", "inside", "An included diamond crystal that reaches the polished surface."],
  ["twinning-wisp", "inside", "A ribbon of pinpoints, clouds or crystals along a twin plane."],
  ["internal-graining", "inside", "Growth irregularity seen as lines, angles or haze inside the stone."],
  ["grain-centre", "inside", "A small, concentrated spot of distorted growth."],
  ["cavity", "inside", "An angular opening where a piece of a feather or a surface crystal has come away."],
  ["chip", "inside", "A shallow break-out at the girdle, a facet edge or the culet."],
  ["bruise", "inside", "A point of impact with fine root-like feathers that go inward."],
  ["indented-natural", "inside", "A patch of the original skin that dips below the polished surface."],
  ["etch-channel", "inside", "A natural tube or groove etched in from the surface."],
  ["laser-drill-hole", "inside", "A straight, man-made tunnel that leads to an inclusion."],
  ["internal-laser-drilling", "inside", "Feathers made by a laser inside the stone to reach an inclusion."],
  ["natural", "surface", "A patch of the original skin left on the stone, most often at the girdle."],
  ["extra-facet", "surface", "A facet that the pattern of the cut does not have."],
  ["abrasion", "surface", "A run of tiny nicks along a facet edge."],
  ["nick", "surface", "A tiny notch at an edge or the girdle, with no depth to be seen."],
  ["pit", "surface", "A tiny opening in the surface, seen as a white dot."],
  ["scratch", "surface", "A line on the surface that crosses facets without regard to the polish."],
  ["polish-lines", "surface", "Fine parallel lines left by polishing, kept within one facet."],
  ["burn-mark", "surface", "A hazy patch where the wheel or the holder overheated the surface."],
  ["rough-girdle", "surface", "A pitted or grainy girdle."],
  ["surface-graining", "surface", "Growth lines at the surface that run on across facet edges."],
  ["lizard-skin", "surface", "A bumpy polish near a cleavage direction."],
  ["laser-inscription", "surface", "Letters or signs written on the stone by laser: a remark, not a fault."],
];

/** Pairs that are half right for one another (scoring.md 2). */
export const LIKE_PAIRS: readonly (readonly [string, string])[] = [
  ["pinpoint", "crystal"],
  ["pinpoint", "cloud"],
  ["crystal", "needle"],
  ["crystal", "knot"],
  ["cloud", "twinning-wisp"],
  ["internal-graining", "grain-centre"],
  ["feather", "cleavage"],
  ["feather", "bearding"],
  ["feather", "bruise"],
  ["chip", "cavity"],
  ["chip", "bruise"],
  ["chip", "nick"],
  ["natural", "indented-natural"],
  ["indented-natural", "cavity"],
  ["etch-channel", "laser-drill-hole"],
  ["nick", "pit"],
  ["nick", "abrasion"],
  ["abrasion", "rough-girdle"],
  ["scratch", "polish-lines"],
  ["surface-graining", "polish-lines"],
  ["burn-mark", "lizard-skin"],
];

const KEBAB = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;

/** A characteristic that an exercise set adds: a coloured stone's or a school's own term. */
export const AddedCharacteristicSchema = z.strictObject({
  name: z.string().max(60).regex(KEBAB, "must be a kebab-case term such as needle-cluster"),
  class: z.enum(CHARACTERISTIC_CLASSES),
  like: z.array(z.string().max(60)).max(60).default([]),
});
export type AddedCharacteristic = z.infer<typeof AddedCharacteristicSchema>;

/** Turns a kebab-case term into the words that are read: `twinning-wisp` gives `twinning wisp`. */
export function toCharacteristicLabel(name: string): string {
  return name.includes("-") ? name.replaceAll("-", " ") : name;
}

/** The characteristics of a set by name, in the order in which a picker lists them. */
export type CharacteristicTable = ReadonlyMap<string, Characteristic>;

/**
 * Builds the table for a set: the trade's terms and those that the set adds. Likeness is made symmetric; a `like`
 * that names nothing in the table is left for the schema to refuse and is ignored here. Empty input gives the
 * trade's terms alone.
 */
export function buildCharacteristicTable(added: readonly AddedCharacteristic[] = []): CharacteristicTable {
  const like = new Map<string, Set<string>>();
  for (const [name] of ROWS) like.set(name, new Set());
  for (const { name } of added) like.set(name, new Set());
  const pairs = [
    ...LIKE_PAIRS,
    ...added.flatMap((one) => one.like.map((other) => [one.name, other] as const)),
  ];
  for (const [a, b] of pairs) {
    if (a === b || !like.has(a) || !like.has(b)) continue;
    like.get(a)?.add(b);
    like.get(b)?.add(a);
  }
  const table = new Map<string, Characteristic>();
  const add = (name: string, characteristicClass: CharacteristicClass, definition: string) =>
    table.set(name, {
      name,
      label: toCharacteristicLabel(name),
      class: characteristicClass,
      definition,
      like: [...(like.get(name) ?? [])].sort(),
    });
  for (const [name, characteristicClass, definition] of ROWS) add(name, characteristicClass, definition);
  for (const one of added) add(one.name, one.class, "Added by this exercise set.");
  return table;
}

/** The trade's terms alone. */
export const DEFAULT_CHARACTERISTICS: CharacteristicTable = buildCharacteristicTable();
