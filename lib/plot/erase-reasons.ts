import type { ScoredPlot } from "@/lib/plot/score-result";

/** What the engine's sentences say before the reason of an overrule (lib/scoring/SPEC.md 10.7). */
const LINE_MARK = "; overruled";
const SENTENCE_MARK = "Overruled, ";

const clearLine = (what: string) => {
  const at = what.indexOf(LINE_MARK);
  return at < 0 ? what : what.slice(0, at + LINE_MARK.length);
};
const clearSentence = (words: string) => (words.startsWith(SENTENCE_MARK) ? "Overruled." : words);

/** A result without the reasons that its lines and sentences give for overrules; nothing else of it changes. */
export function eraseReasons({ result, detail }: ScoredPlot): ScoredPlot {
  return {
    result: {
      ...result,
      lines: result.lines.map(({ what, points }) => ({ what: clearLine(what), points })),
      strays: result.strays.map((stray) => ({ ...stray, because: stray.because.map(clearSentence) })),
    },
    detail: {
      ...detail,
      found: detail.found.map((found) => ({ ...found, words: found.words.map(clearSentence) })),
    },
  };
}
