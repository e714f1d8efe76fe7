"use client";

import { Select, TextInput } from "@mantine/core";
import { toSentence } from "@/components/forms/to-sentence";
import { NumberField } from "@/components/stone/number-field";
import { findFaultAt, type StoneDraft } from "@/components/stone/stone-draft";
import classes from "@/components/stone/stone-form.module.css";
import type { Fault } from "@/lib/base/app-error";
import { getSolid } from "@/lib/gem/build-solid";
import { CUT_LABELS, CUT_NAMES, type CutName, isCutName } from "@/lib/gem/cut-name";

export interface BodyFieldsProps {
  draft: StoneDraft;
  faults: readonly Fault[];
  onChange: (change: Partial<StoneDraft>) => void;
}

function toFieldError(faults: readonly Fault[], path: string): string | undefined {
  const fault = findFaultAt(faults, path);
  return fault === null ? undefined : toSentence(fault);
}

function canBeCut(cut: CutName): boolean {
  try {
    getSolid(cut);
    return true;
  } catch {
    return false;
  }
}

/** The cuts that a form can offer: those that have a standard stone, and the one that this stone has. */
function listCutChoices(current: CutName) {
  return CUT_NAMES.filter((cut) => cut === current || canBeCut(cut)).map((cut) => ({
    value: cut,
    label: CUT_LABELS[cut],
  }));
}

/** What names the stone, and what it is. */
export function IdentityFields({ draft, faults, onChange }: BodyFieldsProps) {
  return (
    <div className={classes.pair}>
      <TextInput
        label="Label"
        description="As it stands on the stone’s box"
        required
        autoComplete="off"
        maxLength={64}
        value={draft.label}
        error={toFieldError(faults, "label")}
        onChange={(event) => onChange({ label: event.currentTarget.value })}
      />
      <Select
        label="Cut"
        description="Fixes which facets there are"
        required
        allowDeselect={false}
        data={listCutChoices(draft.cut)}
        value={draft.cut}
        onChange={(cut) => {
          if (cut !== null && isCutName(cut)) onChange({ cut });
        }}
      />
    </div>
  );
}

const MM_LABELS = [
  ["Largest diameter", "Smallest diameter", "Depth"],
  ["Length", "Width", "Depth"],
] as const;

/** What was weighed and measured: all of it may be left out. */
export function MeasureFields({ draft, faults, onChange }: BodyFieldsProps) {
  const labels = MM_LABELS[draft.cut === "round-brilliant" ? 0 : 1];
  return (
    <div className={classes.fours}>
      <NumberField
        label="Weight"
        unit="ct"
        step={0.01}
        value={draft.weightCt}
        error={findFaultAt(faults, "weightCt")}
        onChange={(weightCt) => onChange({ weightCt })}
      />
      {labels.map((label, i) => (
        <NumberField
          key={label}
          label={label}
          unit="mm"
          step={0.01}
          value={draft.measurementsMm[i] ?? ""}
          error={findFaultAt(faults, `measurementsMm[${i}]`)}
          onChange={(typed) => {
            const next: StoneDraft["measurementsMm"] = [...draft.measurementsMm];
            next[i] = typed;
            onChange({ measurementsMm: next });
          }}
        />
      ))}
    </div>
  );
}

/** What bears on how the stone is seen and held. */
export function HoldingFields({ draft, faults, onChange }: BodyFieldsProps) {
  return (
    <div className={classes.stack}>
      <TextInput
        label="Landmark"
        description="How a student finds 12 o’clock, in a few words: “largest natural at 6”. Students read it."
        maxLength={200}
        value={draft.landmark}
        error={toFieldError(faults, "landmark")}
        onChange={(event) => onChange({ landmark: event.currentTarget.value })}
      />
      <div className={classes.pair}>
        <TextInput
          label="Prongs"
          description="Clock positions, if it is mounted: 1:30, 4:30"
          value={draft.prongs}
          error={toFieldError(faults, "prongsDeg")}
          onChange={(event) => onChange({ prongs: event.currentTarget.value })}
        />
        <NumberField
          label="Refractive index"
          description="2.417 for diamond"
          step={0.001}
          value={draft.refractiveIndex}
          error={findFaultAt(faults, "refractiveIndex")}
          onChange={(refractiveIndex) => onChange({ refractiveIndex })}
        />
      </div>
    </div>
  );
}
