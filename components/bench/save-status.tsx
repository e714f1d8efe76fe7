import { SAVE_WORDS, type SaveWord } from "@/components/bench/save-state";
import classes from "@/components/bench/save-status.module.css";

/** One word, with a sign of its own shape for each. The word is announced when it changes, except the busy ones. */
export function SaveStatus({ word }: { word: SaveWord }) {
  const isBusy = word === "saving" || word === "opening";
  return (
    <span className={classes.root} data-word={word} data-testid="save-status">
      <svg width="14" height="14" viewBox="0 0 14 14" fill="none" aria-hidden="true" focusable="false">
        {(word === "saved" || word === "handed-in") && <circle cx="7" cy="7" r="6" fill="currentColor" />}
        {isBusy && (
          <circle cx="7" cy="7" r="5.2" stroke="currentColor" strokeWidth="1.6" strokeDasharray="3 2.4" />
        )}
        {word === "offline" && (
          <path
            d="M7 1.8a5.2 5.2 0 0 1 0 10.4M7 1.8a5.2 5.2 0 0 0 0 10.4M1 13L13 1"
            stroke="currentColor"
            strokeWidth="1.6"
          />
        )}
        {word === "elsewhere" && (
          <path d="M1.5 4.5h7v8h-7zM5 4.5V1.5h7.5v8H9" stroke="currentColor" strokeWidth="1.5" />
        )}
        {(word === "closed" || word === "unsaved") && (
          <path d="M2 2l10 10M12 2L2 12" stroke="currentColor" strokeWidth="1.8" />
        )}
      </svg>
      <span aria-hidden={isBusy || undefined}>{SAVE_WORDS[word]}</span>
      <span role="status" className="visually-hidden">
        {isBusy ? "" : SAVE_WORDS[word]}
      </span>
    </span>
  );
}
