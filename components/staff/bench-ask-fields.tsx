"use client";

import { Checkbox, NumberInput, Radio } from "@mantine/core";
import { toSentence } from "@/components/forms/to-sentence";
import type { ExerciseFieldsProps } from "@/components/staff/exercise-fields-props";
import classes from "@/components/staff/exercise-form.module.css";
import { LONGEST_MINUTES, MOST_ATTEMPTS, PROOF_SCOPES } from "@/lib/plot/exercise-rules";

const PROOF_CHOICES = {
  none: ["Not asked", "Students may note proofs, and nothing is said where there are none."],
  dots: ["On every dot", "Dust and echoes are mostly drawn as dots."],
  inside: ["On every mark inside", "Whatever is said to lie in the stone, not on it."],
} as const satisfies Record<(typeof PROOF_SCOPES)[number], readonly [string, string]>;

const toNumber = (value: number | string): number | "" => (typeof value === "number" ? value : "");

/** Which marks a proof is asked of at hand-in, and how firmly. */
export function ProofFields({ draft, onChange }: ExerciseFieldsProps) {
  return (
    <div className={classes.choices}>
      <Radio.Group
        label="Proofs: wiped, tilted, regripped"
        value={draft.proofs}
        onChange={(value) => {
          const proofs = PROOF_SCOPES.find((scope) => scope === value);
          if (proofs !== undefined) onChange({ proofs });
        }}
      >
        <div className={classes.choices}>
          {PROOF_SCOPES.map((scope) => (
            <Radio
              key={scope}
              value={scope}
              label={PROOF_CHOICES[scope][0]}
              description={PROOF_CHOICES[scope][1]}
            />
          ))}
        </div>
      </Radio.Group>
      <Checkbox
        label="Required"
        description="Nothing is handed in without them, save when the time runs out. Otherwise hand-in lists the marks that lack one, and the student may go on."
        disabled={draft.proofs === "none"}
        checked={draft.areProofsRequired && draft.proofs !== "none"}
        onChange={(event) => onChange({ areProofsRequired: event.currentTarget.checked })}
      />
    </div>
  );
}

/** When the bench asks whether the stone is clean. */
export function DottingFields({ draft, faults, onChange }: ExerciseFieldsProps) {
  const findAt = (path: string) => {
    const fault = faults.find((one) => one.path === path);
    return fault === undefined ? null : toSentence(fault.message);
  };
  return (
    <fieldset className={classes.group}>
      <legend>Dotting</legend>
      <Checkbox
        label="Ask whether the stone is clean when dots come in a burst"
        description="A quiet note on the bench, and a sign on the watch. It never blocks and costs no points; what a plot is scored by stands in the rubric."
        checked={draft.isDottingOn}
        onChange={(event) => onChange({ isDottingOn: event.currentTarget.checked })}
      />
      <div className={classes.pair}>
        <NumberInput
          label="Dots in a burst"
          description="So many or more"
          min={2}
          max={100}
          allowDecimal={false}
          disabled={!draft.isDottingOn}
          value={draft.burstDots}
          error={findAt("burstDots")}
          onChange={(value) => onChange({ burstDots: toNumber(value) })}
        />
        <NumberInput
          label="Seconds between two"
          description="None more than this after the one before"
          min={0.1}
          max={60}
          step={0.1}
          decimalScale={3}
          disabled={!draft.isDottingOn}
          value={draft.burstGapS}
          error={findAt("burstGapS")}
          onChange={(value) => onChange({ burstGapS: toNumber(value) })}
        />
      </div>
    </fieldset>
  );
}

/** How often, in which order and under which names a student meets the stones. */
export function SittingFields({ draft, faults, onChange }: ExerciseFieldsProps) {
  const fault = faults.find(({ path }) => path === "attempts");
  return (
    <div className={classes.choices}>
      <NumberInput
        label="Attempts at each stone"
        description="Until its debrief is released; the latest counts. A retake for one student is granted on the exercise’s page."
        min={1}
        max={MOST_ATTEMPTS}
        allowDecimal={false}
        value={draft.attempts}
        error={fault === undefined ? null : toSentence(fault.message)}
        onChange={(value) => onChange({ attempts: toNumber(value) })}
      />
      <Checkbox
        label="One after the other"
        description="Each stone opens once the one before it is handed in."
        checked={draft.isInOrder}
        onChange={(event) => onChange({ isInOrder: event.currentTarget.checked })}
      />
      <Checkbox
        label="Hide the labels"
        description="Students see “Stone 1, 2 …” in place of the labels, each in an order of their own. Cover the labels of the stones themselves; captions of photographs are shown as they are. Adding a stone later may change the numbers."
        checked={draft.areLabelsHidden}
        onChange={(event) => onChange({ areLabelsHidden: event.currentTarget.checked })}
      />
    </div>
  );
}

/** How long a student may take over one stone. */
export function TimeLimitField({ draft, faults, onChange }: ExerciseFieldsProps) {
  const fault = faults.find(({ path }) => path === "minutesPerStone");
  return (
    <NumberInput
      label="Minutes for each stone"
      description="From opening it, whatever happens to the computer meanwhile; then what is saved is handed in. Leave it empty for no limit. A change counts for stones opened from then on."
      min={1}
      max={LONGEST_MINUTES}
      allowDecimal={false}
      value={draft.minutesPerStone}
      error={fault === undefined ? null : toSentence(fault.message)}
      onChange={(value) => onChange({ minutesPerStone: toNumber(value) })}
    />
  );
}
