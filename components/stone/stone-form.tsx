"use client";

import { useRouter } from "next/navigation";
import { type FormEvent, useMemo, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { focusFirstFault } from "@/components/forms/focus-first-fault";
import { useAction } from "@/components/forms/use-action";
import { DraftNote } from "@/components/staff/draft-note";
import { SaveLine } from "@/components/staff/save-line";
import { useKeptDraft } from "@/components/staff/use-kept-draft";
import { HoldingFields, IdentityFields, MeasureFields } from "@/components/stone/body-fields";
import { findLostMarks } from "@/components/stone/find-lost-marks";
import { listReferenceSources } from "@/components/stone/list-reference-sources";
import { ProportionFields } from "@/components/stone/proportion-fields";
import {
  createStoneDraft,
  readStoneDraft,
  type StoneDraft,
  StoneDraftSchema,
  toStoneDraft,
} from "@/components/stone/stone-draft";
import { StoneFigures } from "@/components/stone/stone-figures";
import classes from "@/components/stone/stone-form.module.css";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import type { StoneView } from "@/lib/plot/staff-view";
import { DEFAULT_REFRACTIVE_INDEX, type Reference, type StoneBody } from "@/lib/plot/stone";

export interface SaveStoneInput {
  readonly label: string;
  readonly body: StoneBody;
  readonly revision: number;
}

export interface StoneFormProps {
  /** Names the work in this browser. */
  storageKey: string;
  /** Null for a new stone. */
  start: { readonly label: string; readonly body: StoneBody } | null;
  /** 0 for a new stone. */
  revision: number;
  reference: Reference | null;
  /** What the reference's marks may be called. */
  characteristics?: StoneView["characteristics"];
  /** Without it the numbers are shown and cannot be changed. */
  mayEdit: boolean;
  save: (input: SaveStoneInput) => Promise<ActionResult<{ stoneId: string }>>;
  /** Where a new stone leads; its id is put at the end. */
  nextHref?: string;
}

const NO_CHARACTERISTICS: StoneView["characteristics"] = [];
const parseDraft = (kept: unknown) => StoneDraftSchema.safeParse(kept).data ?? null;

/** A stone's label, cut, proportions and measurements beside the stone that they make. */
export function StoneForm({
  storageKey,
  start,
  revision,
  reference,
  characteristics = NO_CHARACTERISTICS,
  mayEdit,
  save,
  nextHref,
}: StoneFormProps) {
  const router = useRouter();
  const refresh = useRefresh();
  const initial = useMemo(
    () => (start === null ? createStoneDraft() : toStoneDraft(start.label, start.body)),
    [start],
  );
  const draft = useKeptDraft({ storageKey, initial, base: revision, parse: parseDraft });
  const { run, pending, failure } = useAction(save);
  const [asked, setAsked] = useState(false);
  const read = useMemo(() => readStoneDraft(draft.value, start?.body ?? null), [draft.value, start]);
  const lostMarks = useMemo(() => findLostMarks(reference, read.solid), [reference, read.solid]);
  const sources = useMemo(
    () => listReferenceSources(reference?.marks ?? [], characteristics),
    [reference, characteristics],
  );
  const change = (part: Partial<StoneDraft>) => draft.update((before) => ({ ...before, ...part }));

  // A label that is still empty is no fault until somebody tries to save.
  const faults = asked ? read.faults : read.faults.filter(({ path }) => path !== "label");
  const refusal = read.faults.find(({ path }) => path.startsWith("proportions"))?.message ?? null;

  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setAsked(true);
    if (read.body === null) {
      focusFirstFault(event.currentTarget);
      return;
    }
    const saved = await run({ label: read.label, body: read.body, revision: draft.base });
    if (saved === null) {
      refresh();
      return;
    }
    draft.settle();
    setAsked(false);
    if (nextHref === undefined) refresh();
    else router.push(`${nextHref}/${saved.value.stoneId}`);
  };

  return (
    <form onSubmit={submit} noValidate className={classes.root}>
      <fieldset className={classes.fields} disabled={!mayEdit}>
        <legend className="visually-hidden">What the stone is</legend>
        {!mayEdit && <p className="muted">Only the tray’s owner or a director can change this stone.</p>}
        <DraftNote draft={draft} serverBase={revision} serverValue={initial} what="stone" />
        <section className={classes.section}>
          <h2>The stone</h2>
          <IdentityFields draft={draft.value} faults={faults} onChange={change} />
          <MeasureFields draft={draft.value} faults={faults} onChange={change} />
        </section>
        <section className={classes.section}>
          <h2>Proportions</h2>
          <ProportionFields
            draft={draft.value}
            faults={faults}
            onChange={(proportions) => change({ proportions })}
          />
        </section>
        <section className={classes.section}>
          <h2>How it is held and seen</h2>
          <HoldingFields draft={draft.value} faults={faults} onChange={change} />
        </section>
        {lostMarks > 0 && (
          <ErrorNote
            message={`${lostMarks === 1 ? "One mark" : `${lostMarks} marks`} of the reference would lie outside this girdle.`}
            next="Set the numbers so that the girdle holds them, or move the marks in a new version of the reference first."
          />
        )}
        {failure !== null && !(draft.isDirty && revision > draft.base) && (
          <ErrorNote
            message={failure.message}
            kept="Everything that you entered is still here."
            faults={failure.faults}
          />
        )}
        {mayEdit && (
          <SaveLine
            label={start === null ? "Put it in the tray" : "Save the stone"}
            pending={pending}
            disabled={start !== null && !draft.isDirty}
            faultCount={asked ? read.faults.length : 0}
            words={draft.isDirty ? "Not saved yet; kept in this browser." : start === null ? "" : "Saved."}
          />
        )}
      </fieldset>
      <aside className={classes.figures} aria-label="The stone that these numbers make">
        <StoneFigures
          solid={read.solid}
          refusal={refusal}
          prongsDeg={read.body?.prongsDeg ?? []}
          measurementsMm={read.body?.measurementsMm}
          refractiveIndex={read.body?.refractiveIndex ?? DEFAULT_REFRACTIVE_INDEX}
          sources={sources}
        />
      </aside>
    </form>
  );
}
