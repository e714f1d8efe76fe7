"use client";

import { Button, Checkbox } from "@mantine/core";
import classes from "@/components/bench/preparation-card.module.css";
import { type PreparationStep, STEP_WORDS } from "@/components/bench/preparation-steps";
import { CleaningCautions } from "@/components/ui/cleaning-cautions";
import { PREPARATION_STEPS, type SittingState } from "@/lib/plot/sitting-event";

export interface PreparationCardProps {
  prepared: SittingState["prepared"];
  /** All steps must be confirmed before plotting. */
  isRequired: boolean;
  canWrite: boolean;
  landmark?: string | undefined;
  schoolRules: string;
  onStep: (step: PreparationStep, done: boolean) => void;
  onStart: () => void;
}

/** What comes before the first mark. */
export function PreparationCard(props: PreparationCardProps) {
  const { prepared, isRequired, canWrite, landmark, schoolRules, onStep, onStart } = props;
  const open = PREPARATION_STEPS.filter((step) => prepared[step] === undefined).length;
  const mustConfirm = isRequired && open > 0;
  return (
    <section className={classes.root} aria-labelledby="preparation-title">
      <div className={classes.steps}>
        <h2 id="preparation-title" className={classes.title}>
          Before the first mark
        </h2>
        <p className="muted">Most false marks are made before the first line is drawn.</p>
        <ol className={classes.list}>
          {PREPARATION_STEPS.map((step) => (
            <li key={step}>
              <Checkbox
                size="md"
                label={STEP_WORDS[step].title}
                description={
                  step === "held" && landmark !== undefined
                    ? `${STEP_WORDS[step].how} Landmark: ${landmark}.`
                    : STEP_WORDS[step].how
                }
                classNames={{ label: classes.stepTitle, description: classes.stepHow }}
                checked={prepared[step] !== undefined}
                disabled={!canWrite}
                onChange={(event) => onStep(step, event.currentTarget.checked)}
              />
            </li>
          ))}
        </ol>
        <div className={classes.start}>
          <Button size="md" disabled={!canWrite || mustConfirm} onClick={onStart}>
            {open === 0 || isRequired ? "Start plotting" : "Start plotting anyway"}
          </Button>
          {open > 0 && (
            <p className="muted" role="status">
              {isRequired
                ? `${open} of ${PREPARATION_STEPS.length} still to confirm; this exercise asks for all of them.`
                : `${open} of ${PREPARATION_STEPS.length} not confirmed yet.`}
            </p>
          )}
        </div>
      </div>
      <CleaningCautions schoolRules={schoolRules} />
    </section>
  );
}
