"use client";

import { Button, Radio } from "@mantine/core";
import { toSentence } from "@/components/forms/to-sentence";
import type { RubricDraft } from "@/components/rubric/rubric-draft";
import classes from "@/components/rubric/rubric-editor.module.css";
import { NumberField } from "@/components/stone/number-field";
import type { Fault } from "@/lib/base/app-error";
import { getUnitText, RUBRIC_GROUPS, type RubricField, type RubricGroup } from "@/lib/plot/rubric-fields";

export interface RubricInputsProps {
  draft: RubricDraft;
  /** As it is in force, to show what differs. */
  inForce: RubricDraft;
  faults: readonly Fault[];
  onChange: (change: (before: RubricDraft) => RubricDraft) => void;
  /** The level of the groups' headings, where the form is a part of its page. */
  heading?: "h2" | "h3";
}

const findAt = (faults: readonly Fault[], path: string) =>
  faults.find((fault) => fault.path === path)?.message ?? null;

function FieldLine({ field, draft, inForce, faults, onChange }: RubricInputsProps & { field: RubricField }) {
  const { path, label, step, why } = field;
  const value = draft.numbers[path] ?? "";
  const old = inForce.numbers[path] ?? "";
  const unit = getUnitText(field);
  return (
    <div className={classes.field} data-changed={value !== old}>
      <NumberField
        label={label}
        value={value}
        step={step}
        {...(unit === "" ? {} : { unit })}
        error={findAt(faults, path)}
        onChange={(typed) =>
          onChange((before) => ({ ...before, numbers: { ...before.numbers, [path]: typed } }))
        }
      />
      <p className={classes.why}>
        {why}
        {value !== old && <span className={classes.was}>{`In force: ${old} ${unit}`.trim()}</span>}
      </p>
    </div>
  );
}

const ORIENTATIONS = [
  ["free", "Free", "A plot drawn with the stone turned counts as if it were held as in the reference."],
  ["given", "Given", "Only plots held as in the reference count: the landmark says how."],
] as const;

function OrientationChoice({ draft, onChange }: RubricInputsProps) {
  return (
    <Radio.Group
      label="Orientation"
      value={draft.orientation}
      onChange={(value) => {
        const chosen = ORIENTATIONS.find(([name]) => name === value);
        if (chosen !== undefined) onChange((before) => ({ ...before, orientation: chosen[0] }));
      }}
    >
      <div className={classes.choices}>
        {ORIENTATIONS.map(([value, label, description]) => (
          <Radio key={value} value={value} label={label} description={description} />
        ))}
      </div>
    </Radio.Group>
  );
}

const toStepsLabel = (steps: number) =>
  steps === 0 ? "Right grade" : steps === 1 ? "1 step away" : `${steps} steps away`;

/** Credit by steps from the reference's grade; farther than the last there is none. */
function CreditList({ draft, faults, onChange }: RubricInputsProps) {
  const setCredits = (change: (credits: readonly string[]) => string[]) =>
    onChange((before) => ({ ...before, credits: change(before.credits) }));
  return (
    <fieldset className={classes.group}>
      <legend>
        <strong>Credit for a grade</strong>
      </legend>
      <p className={classes.lead}>
        A grade that is one step off shows more than one that is three off. Farther than the last there is no
        credit.
      </p>
      <div className={classes.credits}>
        {draft.credits.map((credit, steps) => (
          <NumberField
            // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is what the credit is for.
            key={steps}
            className={classes.credit}
            label={toStepsLabel(steps)}
            value={credit}
            step={5}
            unit="%"
            error={findAt(faults, `gradeCredit[${steps}]`)}
            onChange={(typed) => setCredits((all) => all.map((one, at) => (at === steps ? typed : one)))}
          />
        ))}
        {draft.credits.length < 40 && (
          <Button variant="outline" onClick={() => setCredits((all) => [...all, "0"])}>
            Add a step
          </Button>
        )}
        {draft.credits.length > 1 && (
          <Button variant="subtle" onClick={() => setCredits((all) => all.slice(0, -1))}>
            Take the last away
          </Button>
        )}
      </div>
    </fieldset>
  );
}

/** The fault of what must add up, of the group that holds it. */
function findSumFault(group: RubricGroup, faults: readonly Fault[]): string | null {
  const tables = new Set(group.fields.map(({ path }) => path.split(".")[0] ?? ""));
  const fault = faults.find(({ path }) => (path === "parts" || path === "shares") && tables.has(path));
  return fault?.message ?? null;
}

/** Every number of the rubric with its reason. */
export function RubricInputs(props: RubricInputsProps) {
  const Heading = props.heading ?? "h2";
  return (
    <div className={classes.groups}>
      {RUBRIC_GROUPS.map((group, index) => {
        const sumFault = findSumFault(group, props.faults);
        return (
          <section key={group.title} className={classes.group} aria-label={group.title}>
            <Heading>{group.title}</Heading>
            <p className={classes.lead}>{group.lead}</p>
            {sumFault !== null && (
              <p className={classes.bad} role="alert">
                {toSentence(sumFault)}
              </p>
            )}
            {group.title === "How the stone is held" && <OrientationChoice {...props} />}
            <div className={classes.fields}>
              {group.fields.map((field) => (
                <FieldLine key={field.path} {...props} field={field} />
              ))}
            </div>
            {index === 0 && <CreditList {...props} />}
          </section>
        );
      })}
    </div>
  );
}
