"use client";

import { Button } from "@mantine/core";
import { MessageSquare } from "lucide-react";
import classes from "@/components/bench/bench-notes.module.css";
import { useNoteLine } from "@/components/bench/use-note-line";

export interface BenchNotesProps {
  sittingId: string;
  onCautions: () => void;
}

/** What the instructor has said to this bench. It is read out when it comes, blocks nothing, and can be put away. */
export function BenchNotes({ sittingId, onCautions }: BenchNotesProps) {
  const { notes, dismiss } = useNoteLine(sittingId);
  return (
    <div role="status" aria-label="Notes" className={classes.root} data-empty={notes.length === 0}>
      {notes.map(({ noteId, text }) => (
        <div key={noteId} className={classes.note}>
          <MessageSquare size={18} aria-hidden="true" />
          <p>
            <span className={classes.from}>From your instructor:</span> {text}
          </p>
          <div className={classes.actions}>
            <Button variant="subtle" size="compact-sm" onClick={onCautions}>
              How to clean it
            </Button>
            <Button variant="subtle" size="compact-sm" onClick={() => dismiss(noteId)}>
              Put away
            </Button>
          </div>
        </div>
      ))}
    </div>
  );
}
