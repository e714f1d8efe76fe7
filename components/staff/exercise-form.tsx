"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { focusFirstFault } from "@/components/forms/focus-first-fault";
import { useAction } from "@/components/forms/use-action";
import { DraftNote } from "@/components/staff/draft-note";
import {
  type ExerciseDraft,
  ExerciseDraftSchema,
  type ExerciseInput,
  findExerciseFaults,
  toExerciseInput,
} from "@/components/staff/exercise-draft";
import {
  BenchRuleFields,
  ScheduleFields,
  type SectionChoice,
  WhatFields,
} from "@/components/staff/exercise-fields";
import classes from "@/components/staff/exercise-form.module.css";
import { RubricNumbers } from "@/components/staff/rubric-numbers";
import { SaveLine } from "@/components/staff/save-line";
import { StoneOpenings } from "@/components/staff/stone-openings";
import { type PickableTray, StonePicker } from "@/components/staff/stone-picker";
import { useKeptDraft } from "@/components/staff/use-kept-draft";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import type { Rubric } from "@/lib/plot/rubric";

export interface ExerciseFormProps {
  storageKey: string;
  start: ExerciseDraft;
  /** 0 for a new exercise. */
  revision: number;
  sections: readonly SectionChoice[];
  trays: readonly PickableTray[];
  rubric: Rubric;
  /** Where the rubric is changed; a new exercise has none yet. */
  rubricHref?: string;
  save: (input: ExerciseInput & { revision: number }) => Promise<ActionResult<{ exerciseId: string }>>;
}

const parseDraft = (kept: unknown) => ExerciseDraftSchema.safeParse(kept).data ?? null;

/** An exercise: for whom, when, which stones, by what rules. Leads to its page. */
export function ExerciseForm(props: ExerciseFormProps) {
  const { storageKey, start, revision, sections, trays, rubric, save } = props;
  const router = useRouter();
  const refresh = useRefresh();
  const draft = useKeptDraft({ storageKey, initial: start, base: revision, parse: parseDraft });
  const { run, pending, failure } = useAction(save);
  const [asked, setAsked] = useState(false);
  const allFaults = findExerciseFaults(draft.value);
  const faults = asked ? allFaults : [];
  const change = (part: Partial<ExerciseDraft>) => draft.update((before) => ({ ...before, ...part }));
  const isNew = revision === 0;

  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setAsked(true);
    if (allFaults.length > 0) {
      focusFirstFault(event.currentTarget);
      return;
    }
    const saved = await run({ ...toExerciseInput(draft.value), revision: draft.base });
    if (saved === null) {
      refresh();
      return;
    }
    draft.settle();
    router.push(`/exercises/${saved.value.exerciseId}`);
  };

  return (
    <form onSubmit={submit} noValidate className={classes.root}>
      <DraftNote draft={draft} serverBase={revision} serverValue={start} what="exercise" />
      <section className={classes.section}>
        <h2>What it is</h2>
        <WhatFields draft={draft.value} faults={faults} onChange={change} sections={sections} isNew={isNew} />
      </section>
      <section className={classes.section}>
        <h2>When</h2>
        <ScheduleFields draft={draft.value} faults={faults} onChange={change} />
      </section>
      <section className={classes.section}>
        <h2>Stones</h2>
        <StonePicker
          trays={trays}
          chosen={draft.value.stoneIds}
          onChange={(stoneIds) => change({ stoneIds: [...stoneIds] })}
          error={faults.find(({ path }) => path === "stoneIds")?.message ?? null}
        />
        <StoneOpenings draft={draft.value} faults={faults} onChange={change} trays={trays} />
      </section>
      <section className={classes.section}>
        <h2>On the bench</h2>
        <BenchRuleFields draft={draft.value} faults={faults} onChange={change} />
      </section>
      <section className={classes.section}>
        <details className={classes.rubric}>
          <summary>How plots are scored: the rubric’s numbers</summary>
          <RubricNumbers rubric={rubric} />
          {props.rubricHref !== undefined && (
            <p>
              <Link href={props.rubricHref}>Change the numbers, with an example on a real plot</Link>
            </p>
          )}
        </details>
      </section>
      {failure !== null && !(draft.isDirty && revision > draft.base) && (
        <ErrorNote
          message={failure.message}
          kept="Everything that you entered is still here."
          faults={failure.faults}
        />
      )}
      <SaveLine
        label={isNew ? "Set the exercise" : "Save the exercise"}
        pending={pending}
        disabled={false}
        faultCount={faults.length}
        words={draft.isDirty ? "Not saved yet; kept in this browser." : ""}
      />
    </form>
  );
}
