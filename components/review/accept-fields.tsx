"use client";

import { Checkbox, Group, NumberInput, Radio, Select } from "@mantine/core";
import { CAUSE_LABELS } from "@/components/debrief/debrief-row";
import { useReviewDesk } from "@/components/review/review-desk-context";
import { CAUSES, type Cause } from "@/lib/plot/mark";

export interface AcceptChoice {
  readonly kind: "mark" | "decoy";
  readonly characteristic: string;
  readonly isOptional: boolean;
  readonly cause: Cause;
  readonly extent: "as-drawn" | "dot" | "round";
  /** Of a circle, % of the girdle width. */
  readonly across: number;
}

interface FieldsProps {
  choice: AcceptChoice;
  onChange: (part: Partial<AcceptChoice>) => void;
}

function MarkFields({ choice, onChange }: FieldsProps) {
  const { characteristics } = useReviewDesk().view.debrief;
  return (
    <>
      <Select
        label="Characteristic"
        data={characteristics.map(({ name, label }) => ({ value: name, label }))}
        value={choice.characteristic}
        searchable
        allowDeselect={false}
        onChange={(next) => next !== null && onChange({ characteristic: next })}
      />
      <Checkbox
        label="Need not be plotted (gives no points, takes none)"
        checked={choice.isOptional}
        onChange={(event) => onChange({ isOptional: event.currentTarget.checked })}
      />
    </>
  );
}

function CauseField({ choice, onChange }: FieldsProps) {
  return (
    <Select
      label="Misleads by"
      data={CAUSES.map((value) => ({ value, label: CAUSE_LABELS[value] }))}
      value={choice.cause}
      allowDeselect={false}
      onChange={(next) => onChange({ cause: CAUSES.find((one) => one === next) ?? choice.cause })}
    />
  );
}

function ExtentFields({ choice, onChange }: FieldsProps) {
  return (
    <>
      <Radio.Group
        label="Drawn"
        value={choice.extent}
        onChange={(next) => onChange({ extent: next as AcceptChoice["extent"] })}
      >
        <Group mt={6} gap="6px 1rem">
          <Radio value="as-drawn" label="As the student drew it" />
          <Radio value="dot" label="As a dot" />
          <Radio value="round" label="As a circle" />
        </Group>
      </Radio.Group>
      {choice.extent === "round" && (
        <NumberInput
          label="Across, % of the girdle width"
          min={0.5}
          max={100}
          decimalScale={1}
          value={choice.across}
          onChange={(next) => typeof next === "number" && onChange({ across: next })}
        />
      )}
    </>
  );
}

/** What a stray becomes in the reference, and how it is drawn there. */
export function AcceptFields(fields: FieldsProps) {
  const { choice, onChange } = fields;
  return (
    <>
      <Radio.Group
        label="It becomes"
        value={choice.kind}
        onChange={(next) => onChange({ kind: next as AcceptChoice["kind"] })}
      >
        <Group mt={6} gap="6px 1rem">
          <Radio value="mark" label="A mark of the reference" />
          <Radio value="decoy" label="A decoy: a place that misleads" />
        </Group>
      </Radio.Group>
      {choice.kind === "mark" ? <MarkFields {...fields} /> : <CauseField {...fields} />}
      <ExtentFields {...fields} />
    </>
  );
}
