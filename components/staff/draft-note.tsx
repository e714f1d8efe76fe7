"use client";

import { Button, Group } from "@mantine/core";
import { History } from "lucide-react";
import { type ReactNode, useEffect, useRef } from "react";
import classes from "@/components/staff/draft-note.module.css";
import type { Draft } from "@/components/staff/use-kept-draft";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { When } from "@/components/ui/when";

export interface DraftNoteProps<T> {
  draft: Draft<T>;
  /** What the server holds now. */
  serverBase: number;
  serverValue: T;
  /** "stone", "reference", "exercise". */
  what: string;
  /** Who saved what since, where that is known, and a way to look at it. */
  newer?: ReactNode;
}

function DiscardButton<T>({ draft, serverBase, serverValue, what }: DraftNoteProps<T>) {
  return (
    <ConfirmButton
      danger
      size="sm"
      question="Throw away your unsaved work?"
      detail={<p>The {what} is shown as it is saved. This cannot be undone.</p>}
      confirmLabel="Throw it away"
      onConfirm={() => draft.reset(serverValue, serverBase)}
    >
      Throw my work away
    </ConfirmButton>
  );
}

/**
 * Says that unsaved work was brought back, or that somebody else saved while this work was under way. In both cases
 * nothing is lost: the work stands in the form, and what was saved stands on the server.
 */
export function DraftNote<T>(props: DraftNoteProps<T>) {
  const { draft, serverBase, what, newer } = props;
  const isBehind = draft.isDirty && serverBase > draft.base;
  const behind = useRef<HTMLDivElement>(null);
  // The button that found it out may be far below.
  useEffect(() => {
    if (isBehind) behind.current?.focus();
  }, [isBehind]);
  if (!draft.canKeep && draft.isDirty) {
    return (
      <div className={classes.root} data-tone="bad" role="status">
        <p>This browser keeps nothing between visits. Save before you leave this page.</p>
      </div>
    );
  }
  if (isBehind) {
    return (
      <div ref={behind} tabIndex={-1} className={classes.root} data-tone="bad" role="alert">
        <div className={classes.words}>
          <p className={classes.title}>Someone saved this {what} after you began.</p>
          {newer}
          <p>Nothing is lost: their work is saved, and yours is here, not saved yet.</p>
          <Group gap="sm" mt="xs">
            <Button size="sm" variant="outline" onClick={() => draft.setBase(serverBase)}>
              Keep mine, to save after theirs
            </Button>
            <DiscardButton {...props} />
          </Group>
        </div>
      </div>
    );
  }
  if (draft.restoredFrom === null) return null;
  return (
    <div className={classes.root} role="status">
      <History size={18} aria-hidden="true" className={classes.sign} />
      <div className={classes.words}>
        <p>
          Unsaved work of yours is back: this browser kept it on <When iso={draft.restoredFrom} />.
        </p>
        <Group gap="sm" mt={4}>
          <DiscardButton {...props} />
        </Group>
      </div>
    </div>
  );
}
