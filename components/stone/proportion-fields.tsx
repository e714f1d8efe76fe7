"use client";

import { NumberField } from "@/components/stone/number-field";
import { findFaultAt, listProportionKeys, type StoneDraft } from "@/components/stone/stone-draft";
import classes from "@/components/stone/stone-form.module.css";
import type { Fault } from "@/lib/base/app-error";
import { CUT_RULES, PROPORTION_LABELS, type ProportionKey } from "@/lib/gem/cut-rules";

/** Hints that would not fit beside their label. */
const SHORT_HINTS: Readonly<Partial<Record<ProportionKey, string>>> = {
  starPct: "% from table to girdle",
  lowerHalfPct: "% from girdle to centre",
  shoulderPct: "41 is an ellipse, 50 a parabola",
  wingPct: "50 is slim, 80 full",
  cornerPct: "% of the girdle width",
  stepDropDeg: "degrees, step to step",
};

/** "the table (% of the girdle width)" as a field shows it. */
function toFieldWords(key: ProportionKey): { name: string; hint: string } {
  const [, name, hint] = /^(?:the )?(.*?)(?: \((.*)\))?$/.exec(PROPORTION_LABELS[key]) ?? [];
  const words = name ?? key;
  return { name: words.charAt(0).toUpperCase() + words.slice(1), hint: SHORT_HINTS[key] ?? hint ?? "" };
}

function getStep(key: ProportionKey): number {
  if (key === "chevrons" || key.endsWith("Steps")) return 1;
  if (key === "lengthToWidth") return 0.01;
  return key.endsWith("AngleDeg") ? 0.1 : 0.5;
}

interface ProportionFieldProps {
  cut: StoneDraft["cut"];
  proportionKey: ProportionKey;
  value: string;
  error: string | null;
  onChange: (typed: string) => void;
}

function ProportionField({ cut, proportionKey, value, error, onChange }: ProportionFieldProps) {
  const rule = CUT_RULES[cut][proportionKey];
  if (rule === undefined) return null;
  const { name, hint } = toFieldWords(proportionKey);
  const typed = Number(value.trim().replace(",", "."));
  const at = value.trim() === "" || !Number.isFinite(typed) ? rule.standard : typed;
  return (
    <div className={classes.proportion}>
      <NumberField
        label={name}
        hint={hint}
        className={classes.proportionField}
        value={value}
        onChange={onChange}
        step={getStep(proportionKey)}
        from={rule.standard}
        placeholder={String(rule.standard)}
        error={error}
      />
      {/* A second hand on the same number, for mouse and touch; the field above is the one that is read out. */}
      <input
        type="range"
        className={classes.slider}
        min={rule.min}
        max={rule.max}
        step={getStep(proportionKey)}
        value={at}
        onChange={(event) => onChange(event.currentTarget.value)}
        tabIndex={-1}
        aria-hidden="true"
      />
    </div>
  );
}

export interface ProportionFieldsProps {
  draft: StoneDraft;
  faults: readonly Fault[];
  onChange: (proportions: StoneDraft["proportions"]) => void;
}

/** The numbers that fix the cut's geometry; an empty one takes the cut's standard value. */
export function ProportionFields({ draft, faults, onChange }: ProportionFieldsProps) {
  const keys = listProportionKeys(draft.cut);
  if (keys.length === 0) {
    return <p className="muted">This stone’s facet planes came with its file and are kept as they are.</p>;
  }
  return (
    <div className={classes.proportions}>
      <p className={classes.proportionsNote}>An empty field takes the standard number that it shows.</p>
      {keys.map((key) => (
        <ProportionField
          key={key}
          cut={draft.cut}
          proportionKey={key}
          value={draft.proportions[key] ?? ""}
          error={findFaultAt(faults, `proportions.${key}`)}
          onChange={(typed) => onChange({ ...draft.proportions, [key]: typed })}
        />
      ))}
    </div>
  );
}
