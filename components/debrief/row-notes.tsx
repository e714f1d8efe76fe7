import { type DebriefRow, toMarkKey, toReferenceKey } from "@/components/debrief/debrief-row";
import classes from "@/components/debrief/review-words.module.css";
import { When } from "@/components/ui/when";
import type { CommentView, OverruleView } from "@/lib/plot/review";
import type { DebriefView } from "@/lib/plot/student-view";

/** The overrules that a row shows: those about its mark, and on its reference mark the marks that are not it. */
export function listRowOverrules({ overrules }: DebriefView, { key }: DebriefRow): OverruleView[] {
  return overrules.filter(({ ruling }) => {
    if (ruling.kind === "grade") return false;
    if (toMarkKey(ruling.mark) === key) return true;
    return ruling.kind === "apart" && toReferenceKey(ruling.reference) === key;
  });
}

/** The comments on what a row shows: its mark, or else its reference mark. */
export function listRowComments({ comments }: DebriefView, row: DebriefRow): CommentView[] {
  const keys = [row.key, row.partnerKey];
  return comments.filter(({ subject }) => subject !== null && keys.includes(subject));
}

/** The comments on the whole, and those on a mark that no row shows any more. */
export function listLooseComments({ comments }: DebriefView, rows: readonly DebriefRow[]): CommentView[] {
  const keys = new Set(rows.flatMap(({ key, partnerKey }) => [key, partnerKey]));
  return comments.filter(({ subject }) => subject === null || !keys.has(subject));
}

/** Who wrote something, and when. */
export function ByLine({
  byName,
  iso,
  isEdited = false,
}: {
  byName: string;
  iso: string;
  isEdited?: boolean;
}) {
  return (
    <span className={classes.by}>
      {byName}, <When iso={iso} />
      {isEdited && ", changed"}
    </span>
  );
}

/** What staff ruled and wrote about the mark of a row, to be read. */
export function RowNotes({ view, row }: { view: DebriefView; row: DebriefRow }) {
  const overrules = listRowOverrules(view, row);
  const comments = listRowComments(view, row);
  if (overrules.length + comments.length === 0) return null;
  return (
    <div className={classes.notes}>
      {overrules.map(({ overruleId, reason, byName, madeAt, applies, why }) => (
        <p key={overruleId} className={classes.note} data-kind="overrule">
          <strong>{applies ? "Overruled:" : `The overrule no longer applies: ${why}.`}</strong>{" "}
          <span className={classes.text}>{reason}</span> <ByLine byName={byName} iso={madeAt} />
        </p>
      ))}
      {comments.map(({ commentId, text, byName, madeAt, editedAt }) => (
        <p key={commentId} className={classes.note}>
          <span className={classes.text}>{text}</span>{" "}
          <ByLine byName={byName} iso={madeAt} isEdited={editedAt !== null} />
        </p>
      ))}
    </div>
  );
}
