"use client";

import { Button } from "@mantine/core";
import { useState } from "react";
import { listDebriefRows } from "@/components/debrief/debrief-row";
import words from "@/components/debrief/review-words.module.css";
import { ByLine, listLooseComments } from "@/components/debrief/row-notes";
import { toRulingWords } from "@/components/debrief/to-ruling-words";
import { CommentForm } from "@/components/review/comment-form";
import classes from "@/components/review/review.module.css";
import { useReviewDesk } from "@/components/review/review-desk-context";
import { CommentNote, OverruleNote } from "@/components/review/review-notes";

/** All overrules of the plot, those that ended too, and the comments on the whole of it. */
export function ReviewPanel() {
  const { view, say } = useReviewDesk();
  const [isWriting, setWriting] = useState(false);
  const { debrief, ended, locked } = view;
  const comments = listLooseComments(debrief, listDebriefRows(debrief));
  return (
    <section className={`${classes.panel} no-print`} aria-labelledby="review-title">
      <h2 id="review-title">Your review</h2>
      {locked !== null && <p role="status">{locked}</p>}
      {debrief.overrules.length === 0 ? (
        <p className="muted">
          Nothing is overruled. Each mark, and each grade below, can be, with a reason that the student reads.
        </p>
      ) : (
        debrief.overrules.map((one) => <OverruleNote key={one.overruleId} overrule={one} />)
      )}
      {ended.length > 0 && (
        <details className={classes.ended}>
          <summary>
            {ended.length === 1 ? "1 overrule" : `${ended.length} overrules`} undone or replaced
          </summary>
          {ended.map(({ overruleId, ruling, reason, byName, madeAt, endedBy, endedAt }) => (
            <p key={overruleId} className={words.note}>
              {toRulingWords(debrief, say, ruling)}: {reason} <ByLine byName={byName} iso={madeAt} />; ended
              by <ByLine byName={endedBy} iso={endedAt} />
            </p>
          ))}
        </details>
      )}
      {comments.map((one) => (
        <CommentNote key={one.commentId} comment={one} />
      ))}
      {isWriting ? (
        <CommentForm subject={null} comment={null} onDone={() => setWriting(false)} />
      ) : (
        <div>
          <Button variant="outline" onClick={() => setWriting(true)}>
            Comment on the whole
          </Button>
        </div>
      )}
    </section>
  );
}
