"use client";

import { Button } from "@mantine/core";
import { useState } from "react";
import words from "@/components/debrief/review-words.module.css";
import { ByLine } from "@/components/debrief/row-notes";
import { toRulingWords } from "@/components/debrief/to-ruling-words";
import { CommentForm } from "@/components/review/comment-form";
import classes from "@/components/review/review.module.css";
import { useReviewDesk } from "@/components/review/review-desk-context";
import { useChange } from "@/components/review/use-change";
import { ErrorNote } from "@/components/ui/error-note";
import type { CommentView, OverruleView } from "@/lib/plot/review";

/** An overrule with the button that undoes it. */
export function OverruleNote({ overrule }: { overrule: OverruleView }) {
  const { view, say, actions } = useReviewDesk();
  const { send, pending, failure } = useChange(actions.undo);
  const { overruleId, ruling, reason, byName, madeAt, applies, why } = overrule;
  return (
    <div className={words.note} data-kind="overrule" data-idle={!applies || undefined}>
      {failure !== null && <ErrorNote message={failure.message} />}
      <p>
        <strong>Overruled: {toRulingWords(view.debrief, say, ruling)}.</strong>{" "}
        {!applies && <strong>It no longer applies: {why}. </strong>}
        <span className={words.text}>{reason}</span> <ByLine byName={byName} iso={madeAt} />
      </p>
      <Button
        variant="subtle"
        size="compact-sm"
        loading={pending}
        disabled={view.locked !== null}
        onClick={() => send({ overruleId })}
      >
        Undo
      </Button>
    </div>
  );
}

/** A comment; whoever wrote it may change and delete it. */
export function CommentNote({ comment }: { comment: CommentView }) {
  const { view, actions } = useReviewDesk();
  const { send, pending, failure } = useChange(actions.deleteComment);
  const [isOpen, setOpen] = useState(false);
  const { commentId, subject, text, byName, madeAt, editedAt } = comment;
  if (isOpen) return <CommentForm subject={subject} comment={comment} onDone={() => setOpen(false)} />;
  return (
    <div className={words.note}>
      {failure !== null && <ErrorNote message={failure.message} />}
      <p>
        <span className={words.text}>{text}</span>{" "}
        <ByLine byName={byName} iso={madeAt} isEdited={editedAt !== null} />
      </p>
      {view.ownComments.includes(commentId) && (
        <span className={classes.tools}>
          <Button variant="subtle" size="compact-sm" onClick={() => setOpen(true)}>
            Change
          </Button>
          <Button variant="subtle" size="compact-sm" loading={pending} onClick={() => send({ commentId })}>
            Delete
          </Button>
        </span>
      )}
    </div>
  );
}
