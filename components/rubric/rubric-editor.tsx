"use client";

import { Button } from "@mantine/core";
import { useDebouncedValue } from "@mantine/hooks";
import { useRouter } from "next/navigation";
import { type FormEvent, useMemo, useRef } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { focusFirstFault } from "@/components/forms/focus-first-fault";
import { useAction } from "@/components/forms/use-action";
import { parseRubricDraft, readRubricDraft, toRubricDraft } from "@/components/rubric/rubric-draft";
import classes from "@/components/rubric/rubric-editor.module.css";
import { RubricExamplePanel } from "@/components/rubric/rubric-example-panel";
import { RubricInputs } from "@/components/rubric/rubric-inputs";
import { DraftNote } from "@/components/staff/draft-note";
import { SaveLine } from "@/components/staff/save-line";
import { useKeptDraft } from "@/components/staff/use-kept-draft";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import type { RubricBench } from "@/lib/plot/rescore-view";
import type { Rubric } from "@/lib/plot/rubric";

export interface RubricEditorProps {
  bench: RubricBench;
  userId: string;
  save: (input: { baseVersion: number; rubric: Rubric }) => Promise<ActionResult<{ version: number }>>;
  /** Begins to work out what the saved rubric would change. */
  startRescore: () => Promise<ActionResult<{ rescoreId: string }>>;
}

/** So long after the last key the example is scored anew. */
const SCORE_AFTER_MS = 250;

/** The last rubric that could be scored by, a moment after it was typed. */
function useTypedRubric(read: Rubric | null, inForce: Rubric): Rubric {
  const last = useRef(inForce);
  if (read !== null) last.current = read;
  const [settled] = useDebouncedValue(last.current, SCORE_AFTER_MS);
  return settled;
}

/** The rubric of an exercise: every number, why it is there, and what it does to a real plot. Every save is a version. */
export function RubricEditor({ bench, userId, save, startRescore }: RubricEditorProps) {
  const { exerciseId, rubric, rubricVersion, defaults, results } = bench;
  const router = useRouter();
  const refresh = useRefresh();
  const initial = useMemo(() => toRubricDraft(rubric), [rubric]);
  const draft = useKeptDraft({
    storageKey: `loupework:rubric:${userId}:${exerciseId}`,
    initial,
    base: rubricVersion,
    parse: parseRubricDraft,
  });
  const read = useMemo(() => readRubricDraft(draft.value, rubric), [draft.value, rubric]);
  const typed = useTypedRubric(read.rubric, rubric);
  const { run, pending, failure } = useAction(save);
  const isSame = JSON.stringify(draft.value) === JSON.stringify(initial);
  const next = rubricVersion + 1;

  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    if (read.rubric === null) {
      focusFirstFault(event.currentTarget);
      return;
    }
    const saved = await run({ baseVersion: draft.base, rubric: read.rubric });
    if (saved === null) {
      refresh();
      return;
    }
    draft.settle();
    if (results > 0) await startRescore().catch(() => null);
    router.push(results > 0 ? `/exercises/${exerciseId}/rescore` : `/exercises/${exerciseId}`);
  };

  const words = isSame
    ? `Version ${rubricVersion} is in force.`
    : results === 0
      ? "Not saved yet; kept in this browser. Nothing is scored yet, so no points change."
      : `Not saved yet; kept in this browser. Saving changes no points: it lists first what it would do to ${
          results === 1 ? "the result" : `${results} results`
        }.`;

  return (
    <form onSubmit={submit} noValidate className={classes.root}>
      <div className={classes.groups}>
        <DraftNote draft={draft} serverBase={rubricVersion} serverValue={initial} what="rubric" />
        <RubricInputs draft={draft.value} inForce={initial} faults={read.faults} onChange={draft.update} />
        <div>
          <Button variant="outline" onClick={() => draft.update(() => toRubricDraft(defaults))}>
            Fill in the program’s defaults
          </Button>
        </div>
      </div>
      <RubricExamplePanel
        bench={bench}
        after={typed}
        onChoose={(sittingId) =>
          router.replace(`/exercises/${exerciseId}/rubric?plot=${sittingId}`, { scroll: false })
        }
      />
      <div className={classes.save}>
        {failure !== null && !(draft.isDirty && rubricVersion > draft.base) && (
          <ErrorNote
            message={failure.message}
            kept="Every number that you entered is still here."
            faults={failure.faults}
          />
        )}
        <SaveLine
          label={`Save as version ${next}`}
          pending={pending}
          disabled={isSame}
          faultCount={read.faults.length}
          words={words}
        />
      </div>
    </form>
  );
}
