"use client";

import { NativeSelect } from "@mantine/core";
import {
  type CharacteristicsByName,
  DECOY_CAUSES,
  toStyleName,
  toSubjectKey,
  toSubjectLabel,
} from "@/components/plot-editor/subject-words";
import { type EditorMark, getSubject, isDecoy } from "@/lib/editor/drawn-mark";

interface SubjectSelectProps {
  readonly mark: EditorMark;
  readonly characteristics: CharacteristicsByName;
  readonly onReplace: (mark: EditorMark) => void;
}

/** What one mark is, to be changed. A characteristic stays a characteristic and a decoy a decoy. */
export function SubjectSelect({ mark, characteristics, onReplace }: SubjectSelectProps) {
  if (isDecoy(mark)) {
    return (
      <NativeSelect
        label="Misleads as"
        size="sm"
        value={mark.cause}
        data={DECOY_CAUSES.map((cause) => ({
          value: cause,
          label: toSubjectLabel({ kind: "decoy", cause }, characteristics).replace("decoy: ", ""),
        }))}
        onChange={(event) => {
          const cause = DECOY_CAUSES.find((one) => one === event.currentTarget.value);
          if (cause !== undefined) onReplace({ ...mark, cause });
        }}
      />
    );
  }
  const toOptions = (style: "inside" | "surface") =>
    [...characteristics.values()]
      .filter(({ name }) => toStyleName({ kind: "characteristic", name }, characteristics) === style)
      .map(({ name, label }) => ({ value: name, label }));
  return (
    <NativeSelect
      label="Characteristic"
      size="sm"
      value={toSubjectKey(getSubject(mark))}
      data={[
        { group: "Inside", items: toOptions("inside") },
        { group: "Surface", items: toOptions("surface") },
      ]}
      onChange={(event) => onReplace({ ...mark, characteristic: event.currentTarget.value })}
    />
  );
}
