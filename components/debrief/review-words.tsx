import type { DebriefRow } from "@/components/debrief/debrief-row";
import classes from "@/components/debrief/review-words.module.css";
import { ByLine, listLooseComments } from "@/components/debrief/row-notes";
import type { CalloutWords } from "@/components/debrief/to-callout-words";
import { toRulingWords } from "@/components/debrief/to-ruling-words";
import type { DebriefView } from "@/lib/plot/student-view";

/** What staff overruled, and what they wrote about the whole; nothing where they did neither. */
export function ReviewWords({
  view,
  rows,
  say,
}: {
  view: DebriefView;
  rows: readonly DebriefRow[];
  say: CalloutWords;
}) {
  const { overrules } = view;
  const comments = listLooseComments(view, rows);
  const onMarks = view.comments.length - comments.length;
  if (overrules.length + view.comments.length === 0) return null;
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
      {onMarks > 0 && (
        <p className="muted">
          {onMarks === 1 ? "A comment on one mark stands" : `Comments on marks, ${onMarks} in all, stand`}{" "}
          with the marks above.
        </p>
      )}
    </section>
  );
}
