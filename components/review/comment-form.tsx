"use client";

import { Button, Group, Textarea } from "@mantine/core";
import { type FormEvent, useEffect, useRef } from "react";
import { useReviewDesk } from "@/components/review/review-desk-context";
import { useChange } from "@/components/review/use-change";
import { useDraft } from "@/components/review/use-draft";
import { ErrorNote } from "@/components/ui/error-note";
import { type CommentView, MAX_COMMENT } from "@/lib/plot/review";

export interface CommentFormProps {
  /** What it is on; null: the whole. */
  subject: string | null;
  /** The comment that is changed; null for a new one. */
  comment: CommentView | null;
  onDone: () => void;
}

/** Writes a comment, or changes one's own. */
export function CommentForm({ subject, comment, onDone }: CommentFormProps) {
  const { actions, view } = useReviewDesk();
  const { send, pending, failure } = useChange(actions.writeComment);
  const [text, setText] = useDraft(`comment ${comment?.commentId ?? subject ?? "all"}`, comment?.text);
  const when = view.state === "released" ? "The student reads it at once: the debrief is released." : "";
  const field = useRef<HTMLTextAreaElement>(null);
  // The button that opened it is gone, and the focus with it.
  useEffect(() => field.current?.focus(), []);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (!(await send({ commentId: comment?.commentId ?? null, subject, text }))) return;
    setText(comment?.text ?? "");
    onDone();
  };
  return (
    <form onSubmit={submit} style={{ display: "grid", gap: "0.625rem" }}>
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
      <Textarea
        label={comment === null ? "Comment" : "Change the comment"}
        description={when || "The student reads it with the released debrief, and not before."}
        autosize
        minRows={2}
        maxLength={MAX_COMMENT}
        ref={field}
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      <Group justify="flex-end" gap="sm">
        <Button variant="subtle" onClick={onDone}>
          Cancel
        </Button>
        <Button type="submit" loading={pending} disabled={text.trim() === ""}>
          {comment === null ? "Write" : "Change"}
        </Button>
      </Group>
    </form>
  );
}
