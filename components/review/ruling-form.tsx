"use client";

import { Button, Group, NumberInput, Textarea } from "@mantine/core";
import { type FormEvent, useState } from "react";
import type { DebriefRow } from "@/components/debrief/debrief-row";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { useReviewDesk } from "@/components/review/review-desk-context";
import { RulingRowFields } from "@/components/review/ruling-row-fields";
import { beginChoice, toRuling } from "@/components/review/to-ruling";
import { useChange } from "@/components/review/use-change";
import { useDraft } from "@/components/review/use-draft";
import { ErrorNote } from "@/components/ui/error-note";
import type { GradedProperty } from "@/lib/plot/grades";
import { MAX_REASON, type Ruling } from "@/lib/plot/overrule";

export type RulingSubject =
  | { readonly kind: "row"; readonly row: DebriefRow }
  | { readonly kind: "grade"; readonly property: GradedProperty };

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
      placeholder={`0 to ${most}`}
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

/** Overrules a row or a grade, with a reason; the points follow at once. */
export function RulingForm({ subject, onDone }: { subject: RulingSubject; onDone: () => void }) {
  const { actions } = useReviewDesk();
  const { send, pending, failure } = useChange(actions.overrule);
  const [ruling, setRuling] = useState(() =>
    subject.kind === "grade" ? null : toRuling(subject.row, beginChoice(subject.row)),
  );
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
        <RulingRowFields row={subject.row} onRuling={setRuling} />
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
