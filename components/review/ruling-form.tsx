"use client";

import { Button, Group, NumberInput, Radio, Select, Textarea } from "@mantine/core";
import { type FormEvent, useState } from "react";
import { CAUSE_LABELS, type DebriefRow } from "@/components/debrief/debrief-row";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { listMarkChoices, listReferenceChoices } from "@/components/review/list-choices";
import { useReviewDesk } from "@/components/review/review-desk-context";
import { useChange } from "@/components/review/use-change";
import { useDraft } from "@/components/review/use-draft";
import { ErrorNote } from "@/components/ui/error-note";
import type { GradedProperty } from "@/lib/plot/grades";
import { CAUSES, type Cause } from "@/lib/plot/mark";
import { MAX_REASON, type PLACE_CREDITS, type Ruling } from "@/lib/plot/overrule";

export type RulingSubject =
  | { readonly kind: "row"; readonly row: DebriefRow }
  | { readonly kind: "grade"; readonly property: GradedProperty };

type Place = (typeof PLACE_CREDITS)[number];
type Way = "apart" | "together" | "cause" | "spare";

const WAYS: Readonly<Record<DebriefRow["outcome"], readonly Way[]>> = {
  found: ["apart", "together"],
  overlooked: ["together"],
  stray: ["spare", "cause", "together"],
  "set-aside": ["apart", "together"],
};

const WAY_LABELS: Readonly<Record<Way, string>> = {
  apart: "It is not this mark of the reference",
  together: "It is another mark than the program says",
  cause: "It has another cause",
  spare: "It is not held against the plot",
};

const toId = (key: string | null) => key?.slice(key.indexOf(":") + 1) ?? "";

function PlaceField({ value, onChange }: { value: Place; onChange: (place: Place) => void }) {
  return (
    <Radio.Group label="Its place counts" value={value} onChange={(next) => onChange(next as Place)}>
      <Group mt={6} gap="md">
        <Radio value="measured" label="As measured" />
        <Radio value="half" label="Half at least" />
        <Radio value="full" label="In full" />
      </Group>
    </Radio.Group>
  );
}

interface RowFieldsProps {
  row: DebriefRow;
  onRuling: (ruling: Ruling | null) => void;
}

function RowFields({ row, onRuling }: RowFieldsProps) {
  const { view } = useReviewDesk();
  const ways = WAYS[row.outcome];
  const isOverlooked = row.outcome === "overlooked";
  const [way, setWay] = useState<Way>(ways[0] ?? "together");
  const [other, setOther] = useState<string | null>(null);
  const [cause, setCause] = useState<Cause | null>(null);
  const [place, setPlace] = useState<Place>("measured");
  const tell = (next: { way?: Way; other?: string | null; cause?: Cause | null; place?: Place }) => {
    const now = { way, other, cause, place, ...next };
    onRuling(toRuling(row, now));
  };
  const choices = isOverlooked ? listMarkChoices(view.debrief) : listReferenceChoices(view.debrief, row);
  return (
    <>
      {ways.length > 1 && (
        <Radio.Group
          label="What is so instead"
          value={way}
          onChange={(next) => {
            setWay(next as Way);
            tell({ way: next as Way });
          }}
        >
          <Group mt={6} gap={6} style={{ flexDirection: "column", alignItems: "flex-start" }}>
            {ways.map((one) => (
              <Radio key={one} value={one} label={WAY_LABELS[one]} />
            ))}
          </Group>
        </Radio.Group>
      )}
      {way === "cause" && (
        <Select
          label="Cause"
          data={CAUSES.filter((one) => one !== row.cause).map((value) => ({
            value,
            label: CAUSE_LABELS[value],
          }))}
          value={cause}
          onChange={(next) => {
            const found = CAUSES.find((one) => one === next) ?? null;
            setCause(found);
            tell({ cause: found });
          }}
        />
      )}
      {way === "together" && (
        <>
          <Select
            label={isOverlooked ? "The plotted mark that it is" : "The mark of the reference that it is"}
            data={choices}
            value={other}
            searchable
            onChange={(next) => {
              setOther(next);
              tell({ other: next });
            }}
          />
          <PlaceField
            value={place}
            onChange={(next) => {
              setPlace(next);
              tell({ place: next });
            }}
          />
        </>
      )}
    </>
  );
}

function toRuling(
  row: DebriefRow,
  { way, other, cause, place }: { way: Way; other: string | null; cause: Cause | null; place: Place },
): Ruling | null {
  const own = toId(row.key);
  switch (way) {
    case "apart":
      return { kind: "apart", mark: own, reference: toId(row.partnerKey) };
    case "spare":
      return { kind: "cause", mark: own, cause: null };
    case "cause":
      return cause === null ? null : { kind: "cause", mark: own, cause };
    case "together": {
      if (other === null) return null;
      const [mark, reference] = row.outcome === "overlooked" ? [other, own] : [own, other];
      return { kind: "together", mark, reference, place };
    }
  }
}

interface GradeFieldsProps {
  property: GradedProperty;
  onRuling: (ruling: Ruling | null) => void;
}

function GradeFields({ property, onRuling }: GradeFieldsProps) {
  const { view } = useReviewDesk();
  const worth = view.gradeWorth.find((one) => one.property === property)?.points ?? 0;
  const most = Math.round(worth * 100) / 100;
  return (
    <NumberInput
      label={`Points for ${PROPERTY_LABELS[property].toLowerCase()}, of ${most}`}
      min={0}
      max={most}
      decimalScale={2}
      allowNegative={false}
      onChange={(points) => {
        const isNumber = typeof points === "number" && points >= 0 && worth > 0;
        onRuling(isNumber ? { kind: "grade", property, credit: Math.min(1, points / worth) } : null);
      }}
    />
  );
}

/** What the fields of a row say before any is touched. */
function getFirstRuling(subject: RulingSubject): Ruling | null {
  if (subject.kind === "grade") return null;
  const way = WAYS[subject.row.outcome][0] ?? "together";
  return toRuling(subject.row, { way, other: null, cause: null, place: "measured" });
}

/** Overrules a row or a grade, with a reason; the points follow at once. */
export function RulingForm({ subject, onDone }: { subject: RulingSubject; onDone: () => void }) {
  const { actions } = useReviewDesk();
  const { send, pending, failure } = useChange(actions.overrule);
  const [ruling, setRuling] = useState(() => getFirstRuling(subject));
  const field = subject.kind === "row" ? subject.row.key : subject.property;
  const [reason, setReason] = useDraft(`reason ${field}`);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (ruling === null || !(await send({ ruling, reason }))) return;
    setReason("");
    onDone();
  };
  return (
    <form onSubmit={submit} style={{ display: "grid", gap: "0.875rem" }}>
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
      {subject.kind === "row" ? (
        <RowFields row={subject.row} onRuling={setRuling} />
      ) : (
        <GradeFields property={subject.property} onRuling={setRuling} />
      )}
      <Textarea
        label="Reason"
        description="The student reads it, as you write it, once the debrief is released."
        required
        autosize
        minRows={2}
        maxLength={MAX_REASON}
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
      <Group justify="flex-end" gap="sm">
        <Button variant="subtle" onClick={onDone}>
          Cancel
        </Button>
        <Button type="submit" loading={pending} disabled={ruling === null || reason.trim() === ""}>
          Overrule
        </Button>
      </Group>
    </form>
  );
}
