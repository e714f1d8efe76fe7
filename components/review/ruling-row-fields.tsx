"use client";

import { Group, Radio, Select, Stack } from "@mantine/core";
import { useState } from "react";
import { CAUSE_LABELS, type DebriefRow } from "@/components/debrief/debrief-row";
import { listMarkChoices, listReferenceChoices } from "@/components/review/list-choices";
import { useReviewDesk } from "@/components/review/review-desk-context";
import {
  beginChoice,
  listWays,
  type PlaceCredit,
  type RowChoice,
  type RulingWay,
  toRuling,
} from "@/components/review/to-ruling";
import { CAUSES, type Cause } from "@/lib/plot/mark";
import type { Ruling } from "@/lib/plot/overrule";

const WAY_LABELS: Readonly<Record<RulingWay, string>> = {
  apart: "It is not this mark of the reference",
  together: "It is another mark than the program says",
  cause: "It has another cause",
  spare: "It is not held against the plot",
};

interface FieldsProps {
  row: DebriefRow;
  choice: RowChoice;
  onChange: (part: Partial<RowChoice>) => void;
}

function WayField({ row, choice, onChange }: FieldsProps) {
  const ways = listWays(row);
  if (ways.length === 1) return null;
  return (
    <Radio.Group
      label="What is so instead"
      value={choice.way}
      onChange={(next) => onChange({ way: next as RulingWay })}
    >
      <Stack mt={6} gap={6}>
        {ways.map((one) => (
          <Radio key={one} value={one} label={WAY_LABELS[one]} />
        ))}
      </Stack>
    </Radio.Group>
  );
}

function CauseField({ row, choice, onChange }: FieldsProps) {
  const causes = CAUSES.filter((one) => one !== row.cause);
  return (
    <Select
      label="Cause"
      placeholder="Choose a cause"
      data={causes.map((value) => ({ value, label: CAUSE_LABELS[value] }))}
      value={choice.cause}
      onChange={(next) => onChange({ cause: causes.find((one): one is Cause => one === next) ?? null })}
    />
  );
}

/** Which mark of the other side it is, and how its place counts then. */
function PartnerFields({ row, choice, onChange }: FieldsProps) {
  const { debrief } = useReviewDesk().view;
  const isOverlooked = row.outcome === "overlooked";
  return (
    <>
      <Select
        label={isOverlooked ? "The plotted mark that it is" : "The mark of the reference that it is"}
        placeholder="Choose a mark"
        data={isOverlooked ? listMarkChoices(debrief) : listReferenceChoices(debrief, row)}
        value={choice.other}
        searchable
        onChange={(other) => onChange({ other })}
      />
      <Radio.Group
        label="Its place counts"
        value={choice.place}
        onChange={(next) => onChange({ place: next as PlaceCredit })}
      >
        <Group mt={6} gap="6px 1rem">
          <Radio value="measured" label="As measured" />
          <Radio value="half" label="Half at least" />
          <Radio value="full" label="In full" />
        </Group>
      </Radio.Group>
    </>
  );
}

interface RulingRowFieldsProps {
  row: DebriefRow;
  /** Told of each change; null while something is left to choose. */
  onRuling: (ruling: Ruling | null) => void;
}

/** What a row is instead of what the program says. */
export function RulingRowFields({ row, onRuling }: RulingRowFieldsProps) {
  const [choice, setChoice] = useState(() => beginChoice(row));
  const change = (part: Partial<RowChoice>) => {
    const next = { ...choice, ...part };
    setChoice(next);
    onRuling(toRuling(row, next));
  };
  const fields = { row, choice, onChange: change };
  return (
    <>
      <WayField {...fields} />
      {choice.way === "cause" && <CauseField {...fields} />}
      {choice.way === "together" && <PartnerFields {...fields} />}
    </>
  );
}
