/** The cuts that a stone can have, in the order in which screens list them. */
export const CUT_NAMES = [
  "round-brilliant",
  "oval",
  "marquise",
  "pear",
  "heart",
  "cushion",
  "princess",
  "radiant",
  "emerald",
  "square-emerald",
  "baguette",
  "custom",
] as const;

/** The name of a cut in files and addresses. */
export type CutName = (typeof CUT_NAMES)[number];

/** The cuts in words, for screens. */
export const CUT_LABELS: Readonly<Record<CutName, string>> = {
  "round-brilliant": "Round brilliant",
  oval: "Oval",
  marquise: "Marquise",
  pear: "Pear",
  heart: "Heart",
  cushion: "Cushion",
  princess: "Princess",
  radiant: "Radiant",
  emerald: "Emerald cut",
  "square-emerald": "Square emerald cut",
  baguette: "Baguette",
  custom: "Custom",
};

/** True for the name of a cut. */
export function isCutName(name: string): name is CutName {
  return (CUT_NAMES as readonly string[]).includes(name);
}
