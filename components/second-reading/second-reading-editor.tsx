"use client";

import { Button } from "@mantine/core";
import { useMemo } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { GiveUpButton } from "@/components/second-reading/give-up-button";
import { DraftNote } from "@/components/staff/draft-note";
import { useKeptDraft } from "@/components/staff/use-kept-draft";
import { GradesForm } from "@/components/stone/grades-form";
import classes from "@/components/stone/reference-editor.module.css";
import { ReferencePlot } from "@/components/stone/reference-plot";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { ErrorNote } from "@/components/ui/error-note";
import { PracticeNote } from "@/components/ui/practice-note";
import { useRefresh } from "@/components/ui/use-refresh";
import { joinReferenceDrawings, splitReferenceDrawings } from "@/lib/editor/reference-drawings";
import { type OpenReading, type ReadingPlot, ReadingPlotSchema } from "@/lib/plot/second-reading";

interface ReadingInput {
  readonly revision: number;
  readonly plot: ReadingPlot;
}

export interface SecondReadingEditorProps {
  reading: OpenReading;
  userId: string;
  save: (input: ReadingInput) => Promise<ActionResult<{ revision: number }>>;
  handIn: (input: ReadingInput) => Promise<ActionResult>;
  giveUp: () => Promise<ActionResult>;
  stoneHref: string;
}

const parsePlot = (kept: unknown) => ReadingPlotSchema.safeParse(kept).data ?? null;

/** A second reader plots a stone: the editor of references, with nothing of the reference in it. */
export function SecondReadingEditor(props: SecondReadingEditorProps) {
  const { reading, userId, save, handIn, giveUp, stoneHref } = props;
  const refresh = useRefresh();
  const saving = useAction(save);
  const handing = useAction(handIn);
  const draft = useKeptDraft({
    storageKey: `loupework:reading:${userId}:${reading.readingId}`,
    initial: useMemo(() => reading.plot, [reading.plot]),
    base: reading.revision,
    parse: parsePlot,
  });
  const { value } = draft;
  const failure = saving.failure ?? handing.failure;
  const submitSave = async () => {
    const saved = await saving.run({ revision: draft.base, plot: value });
    if (saved !== null) draft.settle(saved.value.revision, value);
  };
  const submitHandIn = async () => {
    const handed = await handing.run({ revision: draft.base, plot: value });
    if (handed === null) return true;
    draft.settle(draft.base + 1, value);
    refresh();
    return true;
  };
  return (
    <div className={classes.root}>
      <DraftNote
        draft={draft}
        serverBase={reading.revision}
        serverValue={reading.plot}
        what="second reading"
      />
      <ReferencePlot
        key={draft.generation}
        stone={reading}
        initial={joinReferenceDrawings(value.marks, value.decoys)}
        onChange={(drawings) =>
          draft.update((before) => ({ ...before, ...splitReferenceDrawings(drawings) }))
        }
        toolBarEnd={<span className="muted">{draft.isDirty ? "Not saved yet" : "Saved"}</span>}
        aside={
          <section className={classes.aside} aria-label="Grades and handing in">
            <h2>Your grades</h2>
            <GradesForm
              scales={reading.scales}
              grades={value.grades}
              onChange={(grades) => draft.update((before) => ({ ...before, grades }))}
            />
            <PracticeNote />
            {failure !== null && (
              <ErrorNote
                message={failure.message}
                kept="Your drawing is still here, and kept in this browser."
                faults={failure.faults}
              />
            )}
            <div className={classes.saveLine}>
              <Button
                variant="outline"
                onClick={submitSave}
                loading={saving.pending}
                disabled={!draft.isDirty}
              >
                Save for later
              </Button>
              <ConfirmButton
                variant="filled"
                disabled={value.grades.clarity === undefined}
                question="Hand your second reading in?"
                detail={
                  <p>
                    It is frozen with {value.marks.length === 1 ? "1 mark" : `${value.marks.length} marks`}{" "}
                    and compared with the reference, which you then see.
                  </p>
                }
                confirmLabel="Hand in"
                onConfirm={submitHandIn}
              >
                Hand in
              </ConfirmButton>
              {value.grades.clarity === undefined && (
                <span className="muted">Give the clarity grade first.</span>
              )}
              <GiveUpButton giveUp={giveUp} then={stoneHref} />
            </div>
          </section>
        }
      />
    </div>
  );
}
