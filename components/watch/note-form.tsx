"use client";

import { Button, Textarea } from "@mantine/core";
import { Send } from "lucide-react";
import { useId, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { ErrorNote } from "@/components/ui/error-note";
import classes from "@/components/watch/note-form.module.css";
import { NOTE_SUGGESTIONS } from "@/components/watch/watch-words";
import { LONGEST_NOTE } from "@/lib/plot/bench-note";

export type SendNotes = (input: {
  sittingIds: readonly string[];
  text: string;
}) => Promise<ActionResult<{ sent: number; handedIn: number }>>;

export interface NoteFormProps {
  sittingIds: readonly string[];
  /** To whom: "Noor Delacey", "3 benches". */
  to: string;
  send: SendNotes;
  onSent?: () => void;
}

function toSentWords(to: string, { sent, handedIn }: { sent: number; handedIn: number }): string {
  if (sent === 0) return "Not sent: handed in already.";
  return handedIn === 0 ? `Sent to ${to}.` : `Sent to ${sent}; ${handedIn} had handed in.`;
}

/** A short note to one bench or several: a suggestion by one press, or words of one's own. */
export function NoteForm({ sittingIds, to, send, onSent }: NoteFormProps) {
  const [text, setText] = useState("");
  const [said, setSaid] = useState("");
  const sending = useAction(send);
  const headId = useId();
  const submit = async () => {
    const done = await sending.run({ sittingIds, text });
    if (done === null) return;
    setText("");
    setSaid(toSentWords(to, done.value));
    onSent?.();
  };
  return (
    <form
      className={classes.root}
      aria-labelledby={headId}
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <h3 id={headId}>Note to {to}</h3>
      <ul className={classes.suggestions} aria-label="Suggestions">
        {NOTE_SUGGESTIONS.map((suggestion) => (
          <li key={suggestion}>
            <Button
              variant="default"
              size="compact-sm"
              classNames={{ root: classes.suggestion, label: classes.suggestionWords }}
              onClick={() => {
                setText(suggestion);
                setSaid("");
              }}
            >
              {suggestion}
            </Button>
          </li>
        ))}
      </ul>
      <Textarea
        label="What the bench shows"
        autosize
        minRows={2}
        maxRows={4}
        maxLength={LONGEST_NOTE}
        value={text}
        onChange={(event) => {
          setText(event.currentTarget.value);
          setSaid("");
        }}
      />
      <div className={classes.end}>
        <Button
          type="submit"
          leftSection={<Send size={15} aria-hidden="true" />}
          disabled={text.trim() === "" || sittingIds.length === 0}
          loading={sending.pending}
        >
          Send
        </Button>
        <p className="muted" role="status">
          {said || `${LONGEST_NOTE - text.length} characters left`}
        </p>
      </div>
      {sending.failure !== null && (
        <ErrorNote
          message={sending.failure.message}
          kept="Nothing was sent."
          faults={sending.failure.faults}
        />
      )}
    </form>
  );
}
