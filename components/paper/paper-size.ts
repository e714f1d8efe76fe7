/** The two papers that everything is set for. */
export const PAPER_SIZES = ["a4", "letter"] as const;
export type PaperSize = (typeof PAPER_SIZES)[number];

export const PAPER_LABELS: Readonly<Record<PaperSize, string>> = { a4: "A4", letter: "Letter" };

/** The paper that an address asks for; A4 where it says nothing or something else. */
export function readPaperSize(text: string | null | undefined): PaperSize {
  return PAPER_SIZES.find((size) => size === text) ?? "a4";
}
