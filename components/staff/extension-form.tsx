"use client";

import { Button, NumberInput, Select, TextInput } from "@mantine/core";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { toSentence } from "@/components/forms/to-sentence";
import { useAction } from "@/components/forms/use-action";
import classes from "@/components/staff/allowances.module.css";
import { InstantInput } from "@/components/staff/instant-input";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import { MOST_ATTEMPTS } from "@/lib/plot/exercise-rules";
import type { ReviewGrid } from "@/lib/plot/staff-view";

export interface ExtensionInput {
  readonly studentId: string;
  readonly dueAt: string | null;
  readonly closesAt: string | null;
  readonly extraAttempts: number;
  readonly reason: string;
}

export interface ExtensionFormProps {
  students: ReviewGrid["students"];
  extend: (input: ExtensionInput) => Promise<ActionResult>;
  onGiven: (studentId: string) => void;
}

const NOTHING = { dueAt: "", closesAt: "", extraAttempts: 0 as number | "", reason: "" };

/** Later dates or more attempts for one student. */
export function ExtensionForm({ students, extend, onGiven }: ExtensionFormProps) {
  const refresh = useRefresh();
  const { run, pending, failure } = useAction(extend);
  const [studentId, setStudentId] = useState<string | null>(null);
  const [draft, setDraft] = useState(NOTHING);
  const change = (part: Partial<typeof NOTHING>) => setDraft((before) => ({ ...before, ...part }));
  const isNothing = draft.dueAt === "" && draft.closesAt === "" && !(Number(draft.extraAttempts) > 0);
  const findAt = (path: string) => {
    const fault = failure?.faults.find((one) => one.path === path);
    return fault === undefined ? null : toSentence(fault.message);
  };
  const choose = (id: string | null) => {
    setStudentId(id);
    const own = students.find((one) => one.studentId === id);
    setDraft({
      dueAt: own?.dueAt ?? "",
      closesAt: own?.closesAt ?? "",
      extraAttempts: own?.extraAttempts ?? 0,
      reason: own?.extraReason ?? "",
    });
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (studentId === null || isNothing) return;
    const given = await run({
      studentId,
      dueAt: draft.dueAt === "" ? null : draft.dueAt,
      closesAt: draft.closesAt === "" ? null : draft.closesAt,
      extraAttempts: Number(draft.extraAttempts),
      reason: draft.reason,
    });
    if (given === null) return;
    onGiven(studentId);
    choose(null);
    refresh();
  };
  return (
    <form className={classes.form} onSubmit={submit} noValidate>
      <h3>Extension</h3>
      <p className="muted">Whatever is left empty stays as it is for everybody.</p>
      {failure !== null && <ErrorNote message={failure.message} kept="Nothing was changed." />}
      <Select
        label="Extension for"
        placeholder="Choose a student"
        searchable
        data={students.map((student) => ({ value: student.studentId, label: student.name }))}
        value={studentId}
        onChange={choose}
      />
      <div className={classes.pair}>
        <InstantInput
          label="Due"
          value={draft.dueAt}
          error={findAt("dueAt")}
          onChange={(dueAt) => change({ dueAt })}
        />
        <InstantInput
          label="Closes"
          value={draft.closesAt}
          error={findAt("closesAt")}
          onChange={(closesAt) => change({ closesAt })}
        />
      </div>
      <div className={classes.pair}>
        <NumberInput
          label="More attempts at each stone"
          min={0}
          max={MOST_ATTEMPTS}
          allowDecimal={false}
          value={draft.extraAttempts}
          onChange={(value) => change({ extraAttempts: typeof value === "number" ? value : "" })}
        />
        <TextInput
          label="Reason"
          placeholder="For staff alone"
          maxLength={500}
          autoComplete="off"
          value={draft.reason}
          onChange={(event) => change({ reason: event.currentTarget.value })}
        />
      </div>
      <Button
        type="submit"
        variant="outline"
        className={classes.end ?? ""}
        loading={pending}
        disabled={studentId === null || isNothing}
      >
        Give the extension
      </Button>
    </form>
  );
}
