"use client";

import { type FormEvent, useMemo } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { focusFirstFault } from "@/components/forms/focus-first-fault";
import { useAction } from "@/components/forms/use-action";
import { parseRubricDraft, readRubricDraft, toRubricDraft } from "@/components/rubric/rubric-draft";
import editor from "@/components/rubric/rubric-editor.module.css";
import { RubricInputs } from "@/components/rubric/rubric-inputs";
import { DefaultsPanel } from "@/components/settings/defaults-panel";
import classes from "@/components/settings/settings.module.css";
import { DraftNote } from "@/components/staff/draft-note";
import { SaveLine } from "@/components/staff/save-line";
import { useKeptDraft } from "@/components/staff/use-kept-draft";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import type { ProgramSettingsView } from "@/lib/plot/program-settings";
import { DEFAULT_RUBRIC, type Rubric } from "@/lib/plot/rubric";

export interface RubricDefaultsFormProps {
  settings: ProgramSettingsView;
  userId: string;
  save: (input: { baseRevision: number; rubric: Rubric }) => Promise<ActionResult<{ revision: number }>>;
}

const OWN_NUMBERS = toRubricDraft(DEFAULT_RUBRIC);

/** The numbers that a new exercise starts with, and how they differ from Loupework's own. */
export function RubricDefaultsForm({ settings, userId, save }: RubricDefaultsFormProps) {
  const { rubric, revision } = settings;
  const refresh = useRefresh();
  const initial = useMemo(() => toRubricDraft(rubric), [rubric]);
  const draft = useKeptDraft({
    storageKey: `loupework:rubric:${userId}:program`,
    initial,
    base: revision,
    parse: parseRubricDraft,
  });
  const read = useMemo(() => readRubricDraft(draft.value, rubric), [draft.value, rubric]);
  const { run, pending, failure } = useAction(save);
  const isSame = JSON.stringify(draft.value) === JSON.stringify(initial);
  const isBehind = draft.isDirty && revision > draft.base;

  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    if (read.rubric === null) {
      focusFirstFault(event.currentTarget);
      return;
    }
    const saved = await run({ baseRevision: draft.base, rubric: read.rubric });
    // What somebody else saved meanwhile is read again, and told of above.
    if (saved === null) refresh();
    else draft.settle(saved.value.revision, toRubricDraft(read.rubric));
  };

  return (
    <form onSubmit={submit} noValidate className={editor.root}>
      <div className={editor.groups}>
        <div className={classes.head}>
          <h2>Rubric defaults</h2>
          <p className="muted">
            The numbers by which plots of a new exercise are scored. Exercises that are set already keep
            theirs, and results do not change.
          </p>
        </div>
        <DraftNote
          draft={draft}
          serverBase={revision}
          serverValue={initial}
          what="rubric"
          newer={settings.changed !== null && <p>It was {settings.changed.byName}.</p>}
        />
        <RubricInputs
          draft={draft.value}
          inForce={initial}
          faults={read.faults}
          onChange={draft.update}
          heading="h3"
        />
      </div>
      <DefaultsPanel
        typed={read.rubric}
        isOwn={JSON.stringify(draft.value) === JSON.stringify(OWN_NUMBERS)}
        onReset={() => draft.update(() => OWN_NUMBERS)}
      />
      <div className={editor.save}>
        {failure !== null && !isBehind && (
          <ErrorNote
            message={failure.message}
            kept="Every number that you entered is still here."
            faults={failure.faults}
          />
        )}
        <SaveLine
          label="Save the defaults"
          pending={pending}
          disabled={isSame}
          faultCount={read.faults.length}
          words={
            isSame
              ? "Saved: new exercises start with these numbers."
              : "Not saved yet; kept in this browser. Saving changes no exercise that is set and no points."
          }
        />
      </div>
    </form>
  );
}
