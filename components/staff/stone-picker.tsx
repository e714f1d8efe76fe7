"use client";

import { ActionIcon, Checkbox } from "@mantine/core";
import { ArrowDown, ArrowUp, X } from "lucide-react";
import Link from "next/link";
import { useId } from "react";
import { toSentence } from "@/components/forms/to-sentence";
import classes from "@/components/staff/stone-picker.module.css";

export interface PickableStone {
  readonly stoneId: string;
  readonly label: string;
  readonly clarity: string | null;
  readonly hasReference: boolean;
}

export interface PickableTray {
  readonly trayId: string;
  readonly name: string;
  readonly stones: readonly PickableStone[];
}

export interface StonePickerProps {
  trays: readonly PickableTray[];
  chosen: readonly string[];
  onChange: (stoneIds: readonly string[]) => void;
  error: string | null;
}

interface TrayChoiceProps {
  tray: PickableTray;
  chosen: readonly string[];
  onChange: (stoneIds: readonly string[]) => void;
}

function TrayChoice({ tray, chosen, onChange }: TrayChoiceProps) {
  const ready = tray.stones.filter(({ hasReference }) => hasReference).map(({ stoneId }) => stoneId);
  const count = ready.filter((id) => chosen.includes(id)).length;
  const toggle = (id: string, on: boolean) =>
    onChange(on ? [...chosen, id] : chosen.filter((other) => other !== id));
  const toggleAll = (on: boolean) => {
    const others = chosen.filter((id) => !ready.includes(id));
    onChange(on ? [...others, ...ready] : others);
  };
  return (
    <fieldset className={classes.tray}>
      <legend className={classes.legend}>{tray.name}</legend>
      {ready.length > 1 && (
        <Checkbox
          label={`All ${ready.length} stones with a reference`}
          checked={count === ready.length}
          indeterminate={count > 0 && count < ready.length}
          onChange={(event) => toggleAll(event.currentTarget.checked)}
        />
      )}
      <ul className={classes.stones}>
        {tray.stones.map(({ stoneId, label, clarity, hasReference }) => (
          <li key={stoneId}>
            {hasReference ? (
              <Checkbox
                label={clarity === null ? label : `${label} · ${clarity}`}
                checked={chosen.includes(stoneId)}
                onChange={(event) => toggle(stoneId, event.currentTarget.checked)}
              />
            ) : (
              <span className="muted">
                {label}: no reference yet,{" "}
                <Link href={`/trays/${tray.trayId}/stones/${stoneId}/reference`}>draw it</Link>
              </span>
            )}
          </li>
        ))}
      </ul>
    </fieldset>
  );
}

function move(list: readonly string[], from: number, to: number): string[] {
  const next = [...list];
  const [taken] = next.splice(from, 1);
  if (taken !== undefined) next.splice(to, 0, taken);
  return next;
}

function ChosenStones({ trays, chosen, onChange }: Omit<StonePickerProps, "error">) {
  const known = new Map(
    trays.flatMap((tray) => tray.stones.map((stone) => [stone.stoneId, { ...stone, tray: tray.name }])),
  );
  return (
    <ol className={classes.chosen}>
      {chosen.map((stoneId, i) => {
        const label = known.get(stoneId)?.label ?? "a stone that is no longer there";
        return (
          <li key={stoneId} className={classes.chosenRow}>
            <span className={classes.place}>{i + 1}</span>
            <span className={classes.chosenName}>
              {label} <span className="muted">{known.get(stoneId)?.tray}</span>
            </span>
            <ActionIcon
              variant="subtle"
              size={32}
              disabled={i === 0}
              aria-label={`Move ${label} up`}
              onClick={() => onChange(move(chosen, i, i - 1))}
            >
              <ArrowUp size={16} aria-hidden="true" />
            </ActionIcon>
            <ActionIcon
              variant="subtle"
              size={32}
              disabled={i === chosen.length - 1}
              aria-label={`Move ${label} down`}
              onClick={() => onChange(move(chosen, i, i + 1))}
            >
              <ArrowDown size={16} aria-hidden="true" />
            </ActionIcon>
            <ActionIcon
              variant="subtle"
              size={32}
              aria-label={`Take ${label} out`}
              onClick={() => onChange(chosen.filter((id) => id !== stoneId))}
            >
              <X size={16} aria-hidden="true" />
            </ActionIcon>
          </li>
        );
      })}
    </ol>
  );
}

/** Stones from any tray, in the order in which students will see them. Only stones with a reference can be chosen. */
export function StonePicker({ trays, chosen, onChange, error }: StonePickerProps) {
  const titleId = useId();
  return (
    <div className={classes.root}>
      <div className={classes.trays}>
        {trays.map((tray) => (
          <TrayChoice key={tray.trayId} tray={tray} chosen={chosen} onChange={onChange} />
        ))}
      </div>
      <section className={classes.order} aria-labelledby={titleId} data-fault={error !== null} tabIndex={-1}>
        <h3 id={titleId}>
          {chosen.length === 0 ? "Chosen stones" : `${chosen.length} chosen, in this order`}
        </h3>
        {error !== null && (
          <p role="alert" className={classes.error}>
            {toSentence(error)}
          </p>
        )}
        {chosen.length === 0 ? (
          <p className="muted">Tick the stones that this exercise is about.</p>
        ) : (
          <ChosenStones trays={trays} chosen={chosen} onChange={onChange} />
        )}
      </section>
    </div>
  );
}
