"use client";

import { Button } from "@mantine/core";
import { Droplets } from "lucide-react";
import classes from "@/components/bench/dotting-note.module.css";

export interface DottingNoteProps {
  count: number;
  onCautions: () => void;
  onDismiss: () => void;
}

/** A quiet question when dots come in a burst. It blocks nothing and costs nothing. */
export function DottingNote({ count, onCautions, onDismiss }: DottingNoteProps) {
  return (
    <div className={classes.root} role="status">
      <Droplets size={18} aria-hidden="true" />
      <p>
        {count} dots in a row, quickly. Is the stone clean? Dust moves when you wipe it; an inclusion stays.
      </p>
      <div className={classes.actions}>
        <Button variant="subtle" size="compact-sm" onClick={onCautions}>
          How to clean it
        </Button>
        <Button variant="subtle" size="compact-sm" onClick={onDismiss}>
          It is clean
        </Button>
      </div>
    </div>
  );
}
