"use client";

import { useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import classes from "@/components/staff/allowances.module.css";
import { ExtensionForm, type ExtensionInput } from "@/components/staff/extension-form";
import panel from "@/components/staff/panel.module.css";
import { type GrantRetake, type ListRetakeStones, RetakeForm } from "@/components/staff/retake-form";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { ErrorNote } from "@/components/ui/error-note";
import { When } from "@/components/ui/when";
import type { ReviewGrid } from "@/lib/plot/staff-view";

type Student = ReviewGrid["students"][number];

export interface AllowancesProps {
  grid: ReviewGrid;
  extend: (input: ExtensionInput) => Promise<ActionResult>;
  listRetakeStones: ListRetakeStones;
  grantRetake: GrantRetake;
}

const isAllowed = ({ dueAt, closesAt, extraAttempts }: Student) =>
  dueAt !== null || closesAt !== null || extraAttempts > 0;

function AllowanceWords({ student }: { student: Student }) {
  const { dueAt, closesAt, extraAttempts, extraReason } = student;
  return (
    <span>
      <strong>{student.name}</strong>:{" "}
      {dueAt !== null && (
        <>
          due <When iso={dueAt} />
        </>
      )}
      {closesAt !== null && (
        <>
          {dueAt !== null && ", "}closes <When iso={closesAt} />
        </>
      )}
      {extraAttempts > 0 && (
        <>
          {(dueAt !== null || closesAt !== null) && ", "}
          {extraAttempts === 1 ? "1 more attempt" : `${extraAttempts} more attempts`} at each stone
        </>
      )}
      {extraReason !== "" && <span className="muted"> ({extraReason})</span>}
    </span>
  );
}

/** What single students are allowed beyond the exercise's own rules: later dates, more attempts, retakes. */
export function Allowances({ grid, extend, listRetakeStones, grantRetake }: AllowancesProps) {
  const { run, failure } = useAction(extend);
  const [takenBack, setTakenBack] = useState<readonly string[]>([]);
  const given = grid.students.filter((one) => isAllowed(one) && !takenBack.includes(one.studentId));
  const takeBack = async ({ studentId }: Student) => {
    const none = { studentId, dueAt: null, closesAt: null, extraAttempts: 0, reason: "" };
    if ((await run(none)) === null) return false;
    setTakenBack([...takenBack, studentId]);
    return true;
  };
  return (
    <section className={panel.root} aria-labelledby="allowances-title">
      <h2 id="allowances-title">For one student</h2>
      {failure !== null && <ErrorNote message={failure.message} kept="Nothing was changed." />}
      {given.length > 0 && (
        <ul className={classes.list} aria-label="Students with an extension">
          {given.map((student) => (
            <li key={student.studentId}>
              <AllowanceWords student={student} />
              <ConfirmButton
                variant="subtle"
                size="compact-sm"
                question={`Take back the extension of ${student.name}?`}
                detail="The dates and attempts that hold for everybody hold for them again. Work that is handed in stays."
                confirmLabel="Take back"
                onConfirm={() => takeBack(student)}
              >
                Take back<span className="visually-hidden"> the extension of {student.name}</span>
              </ConfirmButton>
            </li>
          ))}
        </ul>
      )}
      <div className={classes.two}>
        <ExtensionForm
          students={grid.students}
          extend={extend}
          onGiven={(studentId) => setTakenBack(takenBack.filter((id) => id !== studentId))}
        />
        <RetakeForm grid={grid} listRetakeStones={listRetakeStones} grantRetake={grantRetake} />
      </div>
    </section>
  );
}
