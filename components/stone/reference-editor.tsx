"use client";

import { Button, TextInput } from "@mantine/core";
import { Info, TriangleAlert } from "lucide-react";
import { type ReactNode, useMemo, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { DraftNote } from "@/components/staff/draft-note";
import { type Draft, useKeptDraft } from "@/components/staff/use-kept-draft";
import { GradesForm } from "@/components/stone/grades-form";
import {
  findReference,
  listReferenceAdvice,
  parseReferenceDraft,
  type ReferenceAdvice,
  type ReferenceDraft,
  toReferenceDraft,
  toReferenceKey,
} from "@/components/stone/reference-draft";
import classes from "@/components/stone/reference-editor.module.css";
import { ReferencePlot } from "@/components/stone/reference-plot";
import { ErrorNote } from "@/components/ui/error-note";
import { PracticeNote } from "@/components/ui/practice-note";
import { useRefresh } from "@/components/ui/use-refresh";
import { When } from "@/components/ui/when";
import { joinReferenceDrawings, splitReferenceDrawings } from "@/lib/editor/reference-drawings";
import type { StoneView } from "@/lib/plot/staff-view";
import type { Reference } from "@/lib/plot/stone";

export interface SaveReferenceInput {
  readonly baseVersion: number;
  readonly reference: Reference;
  readonly note: string;
}

export interface ReferenceEditorProps {
  stone: StoneView;
  userId: string;
  /** Which exercises a saved version touches, and the way to what it would rescore there. */
  touched?: ReactNode;
  save: (input: SaveReferenceInput) => Promise<ActionResult<{ version: number }>>;
}

const SAVE_ID = "save-reference";
const NOTE_ID = "note-to-version";

function AdviceList({ advice }: { advice: readonly ReferenceAdvice[] }) {
  if (advice.length === 0) return null;
  return (
    <ul className={classes.advice} aria-label="Before you save">
      {advice.map(({ text, blocks }) => (
        <li key={text} data-blocks={blocks}>
          {blocks ? <TriangleAlert size={16} aria-hidden="true" /> : <Info size={16} aria-hidden="true" />}
          <span>{text}</span>
        </li>
      ))}
    </ul>
  );
}

/** Who saved the newest version, for somebody whose work began before it. */
function NewerVersion({ stone }: { stone: StoneView }) {
  const newest = stone.versions.find(({ version }) => version === stone.referenceVersion);
  if (newest === undefined) return null;
  return (
    <p>
      Version {newest.version} by {newest.authorName}, <When iso={newest.createdAt} />
      {newest.note === "" ? "." : `: “${newest.note}”.`}
    </p>
  );
}

interface SavePanelProps extends ReferenceEditorProps {
  draft: Draft<ReferenceDraft>;
}

function SavePanel({ stone, draft, touched, save }: SavePanelProps) {
  const refresh = useRefresh();
  const { run, pending, failure } = useAction(save);
  const [savedVersion, setSavedVersion] = useState<number | null>(null);
  const advice = listReferenceAdvice(draft.value, stone.body.landmark !== undefined);
  const reference = findReference(draft.value);
  const isBehind = stone.referenceVersion > draft.base;

  const submit = async () => {
    if (reference === null) return;
    const saved = await run({ baseVersion: draft.base, reference, note: draft.value.note });
    if (saved !== null) {
      setSavedVersion(saved.value.version);
      draft.settle(saved.value.version, { ...draft.value, note: "" });
    }
    refresh();
  };

  return (
    <div className={classes.save} id={SAVE_ID}>
      <AdviceList advice={advice} />
      <TextInput
        label="Note to this version"
        id={NOTE_ID}
        description="What changed and why, for colleagues"
        maxLength={1000}
        value={draft.value.note}
        onChange={(event) => {
          const note = event.currentTarget.value;
          draft.update((before) => ({ ...before, note }));
        }}
      />
      {failure !== null && !isBehind && (
        <ErrorNote
          message={failure.message}
          kept="Your drawing is still here, and kept in this browser."
          faults={failure.faults}
        />
      )}
      <div className={classes.saveLine}>
        <Button
          onClick={submit}
          loading={pending}
          disabled={reference === null || !draft.isDirty || isBehind}
        >
          Save as version {Math.max(draft.base, stone.referenceVersion) + 1}
        </Button>
        <span role="status" className="muted">
          {draft.isDirty
            ? "Not saved yet; kept in this browser."
            : savedVersion === null
              ? ""
              : `Version ${savedVersion} is saved.`}
        </span>
      </div>
      {savedVersion !== null && touched}
    </div>
  );
}

/** Where the work stands, in the tool bar, and the way to what stands beneath the table of marks. */
function SaveSign({ isDirty }: { isDirty: boolean }) {
  const go = () => {
    document.getElementById(SAVE_ID)?.scrollIntoView({ block: "center" });
    document.getElementById(NOTE_ID)?.focus({ preventScroll: true });
  };
  return (
    <span className={classes.sign}>
      <span className="muted">{isDirty ? "Not saved yet" : "Saved"}</span>
      <Button size="sm" variant={isDirty ? "filled" : "outline"} onClick={go}>
        Grades and saving
      </Button>
    </span>
  );
}

/** Draws a stone's reference: marks with weight, depth and what they decide, decoys, grades. Every save is a version. */
export function ReferenceEditor({ stone, userId, touched, save }: ReferenceEditorProps) {
  const initial = useMemo(() => toReferenceDraft(stone.reference), [stone.reference]);
  const draft = useKeptDraft({
    storageKey: toReferenceKey(userId, stone.stoneId),
    initial,
    base: stone.referenceVersion,
    parse: parseReferenceDraft,
  });
  const { value } = draft;
  return (
    <div className={classes.root}>
      <DraftNote
        draft={draft}
        serverBase={stone.referenceVersion}
        serverValue={initial}
        what="reference"
        newer={<NewerVersion stone={stone} />}
      />
      <ReferencePlot
        key={draft.generation}
        stone={stone}
        initial={joinReferenceDrawings(value.marks, value.decoys)}
        onChange={(drawings) =>
          draft.update((before) => ({ ...before, ...splitReferenceDrawings(drawings) }))
        }
        toolBarEnd={<SaveSign isDirty={draft.isDirty} />}
        aside={
          <section className={classes.aside} aria-label="Grades and saving">
            <h2>Grades of the reference</h2>
            <GradesForm
              scales={stone.scales}
              grades={value.grades}
              onChange={(grades) => draft.update((before) => ({ ...before, grades }))}
            />
            <PracticeNote />
            <SavePanel stone={stone} userId={userId} save={save} draft={draft} touched={touched} />
          </section>
        }
      />
    </div>
  );
}
