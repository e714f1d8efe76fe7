"use client";

import { Radio, Select, Textarea, TextInput } from "@mantine/core";
import { toSentence } from "@/components/forms/to-sentence";
import {
  DottingFields,
  ProofFields,
  SittingFields,
  TimeLimitField,
} from "@/components/staff/bench-ask-fields";
import type { ExerciseDraft } from "@/components/staff/exercise-draft";
import type { ExerciseFieldsProps } from "@/components/staff/exercise-fields-props";
import classes from "@/components/staff/exercise-form.module.css";
import { InstantInput } from "@/components/staff/instant-input";
import type { Fault } from "@/lib/base/app-error";

export interface SectionChoice {
  readonly sectionId: string;
  readonly name: string;
  readonly term: string;
  readonly students: number;
}

function findAt(faults: readonly Fault[], path: keyof ExerciseDraft): string | null {
  const fault = faults.find((one) => one.path === path);
  return fault === undefined ? null : toSentence(fault.message);
}

/** For whom it is set, and its words. */
export function WhatFields(
  props: ExerciseFieldsProps & { sections: readonly SectionChoice[]; isNew: boolean },
) {
  const { draft, faults, onChange, sections, isNew } = props;
  return (
    <div className={classes.fields}>
      <div className={classes.pair}>
        <Select
          label="Section"
          required
          disabled={!isNew}
          description={isNew ? "Who sits it" : "An exercise stays with the section that it was set for"}
          allowDeselect={false}
          placeholder="Choose a section"
          data={sections.map(({ sectionId, name, term, students }) => ({
            value: sectionId,
            label: `${name}, ${term} (${students === 1 ? "1 student" : `${students} students`})`,
          }))}
          value={draft.sectionId === "" ? null : draft.sectionId}
          error={findAt(faults, "sectionId")}
          onChange={(sectionId) => onChange({ sectionId: sectionId ?? "" })}
        />
        <TextInput
          label="Title"
          description="As students see it listed"
          required
          maxLength={200}
          autoComplete="off"
          value={draft.title}
          error={findAt(faults, "title")}
          onChange={(event) => onChange({ title: event.currentTarget.value })}
        />
      </div>
      <Textarea
        label="Notes"
        description="What students read before they begin"
        autosize
        minRows={2}
        maxLength={10_000}
        value={draft.notes}
        onChange={(event) => onChange({ notes: event.currentTarget.value })}
      />
    </div>
  );
}

/** Its moments, in the browser's zone. */
export function ScheduleFields({ draft, faults, onChange }: ExerciseFieldsProps) {
  return (
    <div className={classes.three}>
      <InstantInput
        label="Opens"
        description="Students see it listed before, and can begin from here"
        required
        value={draft.opensAt}
        error={findAt(faults, "opensAt")}
        onChange={(opensAt) => onChange({ opensAt })}
      />
      <InstantInput
        label="Due"
        description="Work after this is still taken, and shown as late"
        required
        value={draft.dueAt}
        error={findAt(faults, "dueAt")}
        onChange={(dueAt) => onChange({ dueAt })}
      />
      <InstantInput
        label="Closes"
        description="Nothing is taken after this; leave it empty to keep it open"
        value={draft.closesAt}
        error={findAt(faults, "closesAt")}
        onChange={(closesAt) => onChange({ closesAt })}
      />
      <InstantInput
        label="Debriefs open"
        description="By themselves from here on, once scored; leave it empty to release them by hand"
        value={draft.debriefsAt}
        error={findAt(faults, "debriefsAt")}
        onChange={(debriefsAt) => onChange({ debriefsAt })}
      />
    </div>
  );
}

const PREPARATION_CHOICES = [
  ["off", "Not shown", "Students go straight to the diagram."],
  ["asked", "Shown", "The card is there to tick off before the first mark."],
  ["required", "Required", "Every step is to be ticked off before the first mark."],
] as const;

const ORIENTATION_CHOICES = [
  ["free", "Free", "A plot drawn with the stone turned counts as if it were held as in the reference."],
  ["given", "Given", "Only plots held as in the reference count: the landmark says how."],
] as const;

/** What the bench asks of students, and how they may hold the stone. */
export function BenchRuleFields(props: ExerciseFieldsProps) {
  const { draft, onChange } = props;
  return (
    <div className={classes.fields}>
      <div className={classes.pair}>
        <Radio.Group
          label="Preparation card"
          value={draft.preparation}
          onChange={(value) => {
            const chosen = PREPARATION_CHOICES.find(([name]) => name === value);
            if (chosen !== undefined) onChange({ preparation: chosen[0] });
          }}
        >
          <div className={classes.choices}>
            {PREPARATION_CHOICES.map(([value, label, description]) => (
              <Radio key={value} value={value} label={label} description={description} />
            ))}
          </div>
        </Radio.Group>
        <Radio.Group
          label="How the stone is held"
          value={draft.orientation}
          onChange={(value) => {
            const chosen = ORIENTATION_CHOICES.find(([name]) => name === value);
            if (chosen !== undefined) onChange({ orientation: chosen[0] });
          }}
        >
          <div className={classes.choices}>
            {ORIENTATION_CHOICES.map(([value, label, description]) => (
              <Radio key={value} value={value} label={label} description={description} />
            ))}
          </div>
        </Radio.Group>
      </div>
      <div className={classes.pair}>
        <ProofFields {...props} />
        <div className={classes.fields}>
          <TimeLimitField {...props} />
          <SittingFields {...props} />
        </div>
      </div>
      <DottingFields {...props} />
      <Textarea
        label="Your school’s own rules for cleaning and handling"
        description="Shown first on the preparation card. They go before anything that the card says."
        autosize
        minRows={2}
        maxLength={4000}
        value={draft.schoolRules}
        onChange={(event) => onChange({ schoolRules: event.currentTarget.value })}
      />
    </div>
  );
}
