/**
 * The typeface of everything on paper: Atkinson Hyperlegible Next (OFL, beside the files), as static WOFF, which the
 * PDF writer can subset; it cannot take the variable WOFF2 that the screens use. Two files a weight: Latin and Latin extended.
 */
import { join } from "node:path";
import { Font } from "@react-pdf/renderer";

const FOLDER = join(process.cwd(), "components", "paper", "fonts");
const WEIGHTS = [400, 700] as const;

/** The families in order: a sign that the first lacks is looked for in the next. */
export const PAPER_FONTS = ["Atkinson", "Atkinson extended"];

const SUBSETS = { Atkinson: "latin", "Atkinson extended": "latin-ext" } as const;

let isDone = false;

/** Makes the fonts known to the PDF writer, once. */
export function registerFonts(): void {
  if (isDone) return;
  for (const [family, subset] of Object.entries(SUBSETS)) {
    Font.register({
      family,
      fonts: WEIGHTS.map((fontWeight) => ({
        src: join(FOLDER, `atkinson-hyperlegible-next-${subset}-${fontWeight}-normal.woff`),
        fontWeight,
      })),
    });
  }
  // Words are never broken: a label or a name that is hyphenated is another one.
  Font.registerHyphenationCallback((word) => [word]);
  isDone = true;
}
