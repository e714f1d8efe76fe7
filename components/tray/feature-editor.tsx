"use client";

import { Checkbox, NumberInput } from "@mantine/core";
import { type ReactNode, useRef } from "react";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import classes from "@/components/tray/feature-editor.module.css";
import type { Characteristic } from "@/lib/plot/characteristic";
import type { PlottedMark } from "@/lib/plot/mark";
import type { StoneBody } from "@/lib/plot/stone";

/** What was seen of the stone in hand, as the fields hold it. */
export interface SeenDraft {
  readonly marks: readonly PlottedMark[];
  readonly weightCt: number | string;
  readonly isHeldByLandmark: boolean;
}

export const NOTHING_SEEN: SeenDraft = { marks: [], weightCt: "", isHeldByLandmark: false };

/** The weight that was typed; null for none. */
export function readWeight({ weightCt }: SeenDraft): number | null {
  return typeof weightCt === "number" && weightCt > 0 ? weightCt : null;
}

export interface FeatureEditorProps {
  cut: StoneBody["cut"];
  proportions: StoneBody["proportions"];
  characteristics: readonly Characteristic[];
  landmark?: string | undefined;
  draft: SeenDraft;
  onChange: (part: Partial<SeenDraft>) => void;
  /** Beneath the fields: the button, and what came of it. */
  children: ReactNode;
}

/** Two or three features of the stone in hand, and its weight. */
export function FeatureEditor(props: FeatureEditorProps) {
  const { cut, proportions, characteristics, landmark, draft, onChange, children } = props;
  const initial = useRef(draft.marks);
  return (
    <PlotEditor
      mode="bench"
      cut={cut}
      proportions={proportions}
      characteristics={characteristics}
      initialMarks={initial.current}
      onChange={(_change, marks) => onChange({ marks })}
      note={
        <p>
          Plot the two or three features that are easiest to see, where they lie. More marks are not needed.
        </p>
      }
      aside={
        <div className={classes.aside}>
          <NumberInput
            label="Weight, ct"
            description="If a scale is at hand; it tells more than a feature"
            min={0}
            max={10_000}
            decimalScale={3}
            step={0.01}
            value={draft.weightCt}
            onChange={(weightCt) => onChange({ weightCt })}
          />
          <Checkbox
            label="Held by its landmark"
            description={
              landmark === undefined
                ? "Twelve o’clock is where the reference has it. Else every turn of the cut is tried."
                : `${landmark}. Else every turn of the cut is tried.`
            }
            checked={draft.isHeldByLandmark}
            onChange={(event) => onChange({ isHeldByLandmark: event.currentTarget.checked })}
          />
          {children}
        </div>
      }
    />
  );
}
