"use client";

import { SegmentedControl, Select, TextInput } from "@mantine/core";
import { useMemo } from "react";
import type { HolderDraft } from "@/components/tray/holder-draft";
import classes from "@/components/tray/holder-fields.module.css";
import type { HolderOption } from "@/lib/plot/hand-out";

export interface HolderFieldsProps {
  draft: HolderDraft;
  holders: readonly HolderOption[];
  onChange: (part: Partial<HolderDraft>) => void;
}

function groupBySection(holders: readonly HolderOption[]) {
  const groups = new Map<string, { value: string; label: string }[]>();
  for (const { studentId, name, sections } of holders) {
    const key = sections.join(", ");
    groups.set(key, [...(groups.get(key) ?? []), { value: studentId, label: name }]);
  }
  return [...groups].sort(([a], [b]) => a.localeCompare(b)).map(([group, items]) => ({ group, items }));
}

/** To whom, by when, and a note. */
export function HolderFields({ draft, holders, onChange }: HolderFieldsProps) {
  const data = useMemo(() => groupBySection(holders), [holders]);
  return (
    <div className={classes.root}>
      <SegmentedControl
        aria-label="Hand out to"
        data={[
          { value: "student", label: "A student" },
          { value: "seat", label: "A seat" },
        ]}
        value={draft.kind}
        onChange={(kind) => onChange({ kind: kind === "seat" ? "seat" : "student" })}
      />
      {draft.kind === "student" ? (
        <Select
          aria-label="Student"
          placeholder={holders.length === 0 ? "No student in your sections" : "Choose a student"}
          data={data}
          searchable
          clearable
          clearButtonProps={{ "aria-label": "Choose nobody" }}
          value={draft.studentId}
          onChange={(studentId) => onChange({ studentId })}
          nothingFoundMessage="Nobody of that name"
        />
      ) : (
        <TextInput
          aria-label="Seat"
          placeholder="Seat, such as Bench 4"
          maxLength={60}
          value={draft.seat}
          onChange={(event) => onChange({ seat: event.currentTarget.value })}
        />
      )}
      <TextInput
        type="datetime-local"
        aria-label="Due back (may be left empty)"
        title="Due back; may be left empty"
        value={draft.dueBack}
        onChange={(event) => onChange({ dueBack: event.currentTarget.value })}
      />
      <TextInput
        aria-label="Note"
        placeholder="Note (may be left empty)"
        maxLength={300}
        value={draft.note}
        onChange={(event) => onChange({ note: event.currentTarget.value })}
      />
    </div>
  );
}
