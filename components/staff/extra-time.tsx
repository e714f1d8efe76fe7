"use client";

import { Button, NumberInput, Select, TextInput } from "@mantine/core";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import classes from "@/components/staff/extra-time.module.css";
import panel from "@/components/staff/panel.module.css";
import { ErrorNote } from "@/components/ui/error-note";
import { toMinutes } from "@/components/ui/to-minutes";
import { useRefresh } from "@/components/ui/use-refresh";
import { LONGEST_MINUTES } from "@/lib/plot/exercise-rules";
import type { ReviewGrid } from "@/lib/plot/staff-view";

export interface ExtraTimeInput {
  readonly studentId: string;
  readonly extraMinutes: number;
  readonly reason: string;
}

export interface ExtraTimeProps {
  /** The exercise's own limit for each stone. */
  minutesPerStone: number;
  students: ReviewGrid["students"];
  grant: (input: ExtraTimeInput) => Promise<ActionResult>;
}

/** The time limit of an exercise, and who has more. */
export function ExtraTime({ minutesPerStone, students, grant }: ExtraTimeProps) {
  const refresh = useRefresh();
  const { run, pending, failure } = useAction(grant);
  const [studentId, setStudentId] = useState<string | null>(null);
  const [minutes, setMinutes] = useState<number | "">(10);
  const [reason, setReason] = useState("");
  const given = students.filter(({ extraMinutes }) => extraMinutes > 0);
  const give = async (input: ExtraTimeInput) => {
    if ((await run(input)) === null) return;
    setStudentId(null);
    setReason("");
    refresh();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (studentId !== null && minutes !== "") void give({ studentId, extraMinutes: minutes, reason });
  };
  return (
    <section className={panel.root} aria-labelledby="extra-time-title">
      <h2 id="extra-time-title">Time</h2>
      <p>
        {toMinutes(minutesPerStone)} for each stone, from opening it. When the time is up, what is saved is
        handed in.
      </p>
      {given.length > 0 && (
        <ul className={classes.list} aria-label="Students with extra time">
          {given.map((student) => (
            <li key={student.studentId}>
              <span>
                <strong>{student.name}</strong>: {toMinutes(student.extraMinutes)} more
                {student.extraReason !== "" && <span className="muted"> ({student.extraReason})</span>}
              </span>
              <Button
                variant="subtle"
                size="compact-sm"
                disabled={pending}
                onClick={() => give({ studentId: student.studentId, extraMinutes: 0, reason: "" })}
              >
                Take back<span className="visually-hidden"> the extra time of {student.name}</span>
              </Button>
            </li>
          ))}
        </ul>
      )}
      {failure !== null && <ErrorNote message={failure.message} kept="Nothing was changed." />}
      <form className={classes.form} onSubmit={submit}>
        <Select
          label="Extra time for"
          placeholder="Choose a student"
          searchable
          data={students.map((student) => ({ value: student.studentId, label: student.name }))}
          value={studentId}
          onChange={setStudentId}
        />
        <NumberInput
          label="Minutes more"
          min={1}
          max={LONGEST_MINUTES}
          allowDecimal={false}
          value={minutes}
          onChange={(value) => setMinutes(typeof value === "number" ? value : "")}
        />
        <TextInput
          label="Reason"
          placeholder="For staff alone"
          maxLength={500}
          autoComplete="off"
          value={reason}
          onChange={(event) => setReason(event.currentTarget.value)}
        />
        <Button
          type="submit"
          variant="outline"
          loading={pending}
          disabled={studentId === null || minutes === ""}
        >
          Give extra time
        </Button>
      </form>
      <p className="muted">
        A stone on the bench gets the time at once. Taking it back counts for stones opened from then on.
      </p>
    </section>
  );
}
