import classes from "@/components/debrief/review-words.module.css";
import { ByLine } from "@/components/debrief/row-notes";
import type { CalloutWords } from "@/components/debrief/to-callout-words";
import { toRulingWords } from "@/components/debrief/to-ruling-words";
import type { DebriefView } from "@/lib/plot/student-view";

/** What staff overruled, and what they wrote about the whole; nothing where they did neither. */
export function ReviewWords({ view, say }: { view: DebriefView; say: CalloutWords }) {
  const { overrules } = view;
  const comments = view.comments.filter(({ subject }) => subject === null);
  if (overrules.length + comments.length === 0) return null;
  return (
    <section className={classes.words} aria-labelledby="review-words-title">
      <h2 id="review-words-title">From your instructor</h2>
      {comments.map(({ commentId, text, byName, madeAt, editedAt }) => (
        <p key={commentId} className={classes.note}>
          <span className={classes.text}>{text}</span>{" "}
          <ByLine byName={byName} iso={madeAt} isEdited={editedAt !== null} />
        </p>
      ))}
      {overrules.map(({ overruleId, ruling, reason, byName, madeAt }) => (
        <p key={overruleId} className={classes.note} data-kind="overrule">
          <strong>{toRulingWords(view, say, ruling)}.</strong> <span className={classes.text}>{reason}</span>{" "}
          <ByLine byName={byName} iso={madeAt} />
        </p>
      ))}
    </section>
  );
}
