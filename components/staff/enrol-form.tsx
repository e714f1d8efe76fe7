"use client";

import { Button, Checkbox, TextInput } from "@mantine/core";
import { Search } from "lucide-react";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import panel from "@/components/staff/panel.module.css";
import { EmptyState } from "@/components/ui/empty-state";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import type { PersonRow } from "@/lib/plot/staff-view";

export interface EnrolFormProps {
  /** Active students who are not in the section yet. */
  students: readonly PersonRow[];
  enrol: (studentIds: readonly string[]) => Promise<ActionResult<{ enrolled: number }>>;
}

/** Chooses students to enrol in a section. */
export function EnrolForm({ students, enrol }: EnrolFormProps) {
  const refresh = useRefresh();
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [search, setSearch] = useState("");
  const [enrolled, setEnrolled] = useState<number | null>(null);
  const { run, pending, failure } = useAction(enrol);
  const shown = students.filter(({ name, login }) =>
    `${name} ${login}`.toLowerCase().includes(search.trim().toLowerCase()),
  );
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const done = await run(chosen);
    if (done === null) return;
    setEnrolled(done.value.enrolled);
    setChosen([]);
    refresh();
  };
  return (
    <form onSubmit={submit} className={panel.form}>
      <p role="status" className="muted">
        {enrolled === null
          ? ""
          : enrolled === 1
            ? "1 student was enrolled."
            : `${enrolled} students were enrolled.`}
      </p>
      {students.length === 0 ? (
        <EmptyState title="No student left to enrol">
          Every active student is in this section. Add people first to enrol more.
        </EmptyState>
      ) : (
        <>
          <TextInput
            aria-label="Search students"
            placeholder="Search students"
            leftSection={<Search size={15} aria-hidden="true" />}
            value={search}
            onChange={(event) => setSearch(event.currentTarget.value)}
          />
          <fieldset className={panel.choices}>
            <legend className="visually-hidden">Students to enrol</legend>
            {shown.map(({ userId, name, login }) => (
              <Checkbox
                key={userId}
                label={`${name} (${login})`}
                checked={chosen.includes(userId)}
                onChange={(event) =>
                  setChosen(
                    event.currentTarget.checked
                      ? [...chosen, userId]
                      : chosen.filter((other) => other !== userId),
                  )
                }
              />
            ))}
            {shown.length === 0 && <p className="muted">No student matches “{search}”.</p>}
          </fieldset>
          {failure !== null && (
            <ErrorNote message={failure.message} kept="Nobody was enrolled." faults={failure.faults} />
          )}
          <div>
            <Button type="submit" loading={pending} disabled={chosen.length === 0}>
              {chosen.length === 0
                ? "Enrol"
                : `Enrol ${chosen.length === 1 ? "1 student" : `${chosen.length} students`}`}
            </Button>
          </div>
        </>
      )}
    </form>
  );
}
