import type { OpenSitting } from "@/components/my-stones/begin-button";
import type { NextStep } from "@/components/my-stones/find-next-step";
import classes from "@/components/my-stones/next-step-panel.module.css";
import { StoneLink } from "@/components/my-stones/stone-link";
import { CutGlyph } from "@/components/ui/cut-glyph";
import { toMinutes } from "@/components/ui/to-minutes";
import { When } from "@/components/ui/when";

/** The one thing to do next, large, at the top of the student's page. */
export function NextStepPanel({ step, openSitting }: { step: NextStep; openSitting: OpenSitting }) {
  if (step.kind === "nothing") return null;
  if (step.kind === "wait") {
    return (
      <section className={classes.root} aria-label="Next">
        <div className={classes.words}>
          <p className={classes.eyebrow}>Next</p>
          <h2 className={classes.title}>{step.stone?.label ?? step.exercise.title}</h2>
          <p className={classes.detail}>
            {step.stone !== null && `${step.exercise.title} · `}
            Opens <When iso={step.opensAt} show="both" />. Nothing to do until then.
          </p>
        </div>
      </section>
    );
  }
  const { exercise, stone } = step;
  const isBegun = stone.state === "on-the-bench";
  return (
    <section className={classes.root} aria-label="Next">
      <div className={classes.glyph}>
        <CutGlyph cut={stone.cut} size={108} />
      </div>
      <div className={classes.words}>
        <p className={classes.eyebrow}>Next</p>
        <h2 className={classes.title}>
          {step.kind === "read" ? "Read what became of" : isBegun ? "Go on with" : "Plot"} {stone.label}
        </h2>
        <p className={classes.detail}>
          {exercise.title}
          {" · "}
          {step.kind === "read" && stone.total !== null ? (
            <>{stone.total.toFixed(2)} of 100 points</>
          ) : (
            <>
              due <When iso={exercise.dueAt} show="both" />
            </>
          )}
          {!isBegun && step.kind === "plot" && exercise.minutesPerStone !== null && (
            <> · {toMinutes(exercise.minutesPerStone)} from the moment you begin</>
          )}
          {stone.endsAt !== null && (
            <>
              {" "}
              · time runs out <When iso={stone.endsAt} show="both" />
            </>
          )}
          {isBegun && ` · ${toMarkCount(stone.markCount)} so far`}
        </p>
      </div>
      <div className={classes.action}>
        <StoneLink
          exerciseId={exercise.exerciseId}
          stone={stone}
          isTaken
          minutes={exercise.minutesPerStone}
          openSitting={openSitting}
          size="md"
          variant="filled"
        />
      </div>
    </section>
  );
}

function toMarkCount(count: number): string {
  return count === 1 ? "1 mark" : `${count} marks`;
}
