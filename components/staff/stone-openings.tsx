import { useState } from "react";
import { toSentence } from "@/components/forms/to-sentence";
import type { ExerciseFieldsProps } from "@/components/staff/exercise-fields-props";
import classes from "@/components/staff/exercise-form.module.css";
import { InstantInput } from "@/components/staff/instant-input";
import type { PickableTray } from "@/components/staff/stone-picker";

/** When each chosen stone opens, where that is later than the exercise. Folded away until it is asked for. */
export function StoneOpenings(props: ExerciseFieldsProps & { trays: readonly PickableTray[] }) {
  const { draft, faults, onChange, trays } = props;
  const { stoneIds, stoneOpenings } = draft;
  const later = stoneIds.filter((stoneId) => (stoneOpenings[stoneId] ?? "") !== "").length;
  const [isOpen, setOpen] = useState(later > 0);
  if (stoneIds.length === 0) return null;
  const labels = new Map(
    trays.flatMap(({ stones }) => stones.map(({ stoneId, label }) => [stoneId, label] as const)),
  );
  const errorOf = (stoneId: string) => {
    const fault = faults.find(({ path }) => path === `stoneOpenings.${stoneId}`);
    return fault === undefined ? null : toSentence(fault.message);
  };
  return (
    <details
      className={classes.rubric}
      open={isOpen || faults.some(({ path }) => path.startsWith("stoneOpenings."))}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        Stones that open later than the exercise{later > 0 && `: ${later} of ${stoneIds.length}`}
      </summary>
      <p className="muted">
        Students see such a stone listed, with its date, and can begin it from then on. Leave a field empty
        for a stone that opens with the exercise.
      </p>
      <div className={classes.openings}>
        {stoneIds.map((stoneId) => {
          const label = labels.get(stoneId) ?? "A stone that is no longer there";
          return (
            <InstantInput
              key={stoneId}
              label={`${label} opens`}
              value={stoneOpenings[stoneId] ?? ""}
              error={errorOf(stoneId)}
              onChange={(iso) => onChange({ stoneOpenings: { ...stoneOpenings, [stoneId]: iso } })}
            />
          );
        })}
      </div>
    </details>
  );
}
