"use client";

import { Button, FileInput, TextInput } from "@mantine/core";
import { useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { LinkSheet } from "@/components/staff/link-sheet";
import panel from "@/components/staff/panel.module.css";
import { RosterPlanTable } from "@/components/staff/roster-plan-table";
import { ErrorNote } from "@/components/ui/error-note";
import type { MadeLink } from "@/lib/plot/access-link";
import type { RosterPlan } from "@/lib/plot/roster";

interface Done {
  readonly newUserIds: string[];
  readonly changed: number;
  readonly sections: number;
}

export interface RosterFormProps {
  plan: (form: FormData) => Promise<ActionResult<RosterPlan>>;
  importRoster: (form: FormData, fingerprint: string) => Promise<ActionResult<Done>>;
  createLinks: (userIds: readonly string[]) => Promise<ActionResult<MadeLink[]>>;
}

function toForm(files: readonly File[], termOfNew: string): FormData {
  const form = new FormData();
  for (const file of files) form.append("files", file);
  form.append("termOfNew", termOfNew);
  return form;
}

/** What was done, and the invitations that follow from it. */
function RosterDone({ done, createLinks }: { done: Done; createLinks: RosterFormProps["createLinks"] }) {
  const [links, setLinks] = useState<readonly MadeLink[]>([]);
  const { run, pending, failure } = useAction(createLinks);
  const count = done.newUserIds.length;
  return (
    <section className={panel.root}>
      <h2 className="no-print">The roster is in</h2>
      <p role="status" className="no-print">
        {count} added, {done.changed} changed, {done.sections} {done.sections === 1 ? "section" : "sections"}{" "}
        made.
      </p>
      {count > 0 && links.length === 0 && (
        <>
          <p>Who was added has no password yet. An invitation is a link that lets them set one, once.</p>
          <div>
            <Button
              loading={pending}
              onClick={async () => setLinks((await run(done.newUserIds))?.value ?? [])}
            >
              Make {count === 1 ? "the invitation" : `${count} invitations`}
            </Button>
          </div>
        </>
      )}
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
      {links.length > 0 && <LinkSheet links={links} />}
    </section>
  );
}

/** Brings a roster in: what it would do is shown row by row first, then all of it is done or nothing. */
export function RosterForm({ plan, importRoster, createLinks }: RosterFormProps) {
  const [files, setFiles] = useState<File[]>([]);
  const [term, setTerm] = useState("");
  const [shown, setShown] = useState<RosterPlan | null>(null);
  const [done, setDone] = useState<Done | null>(null);
  const planning = useAction(plan);
  const importing = useAction(importRoster);

  const work = async (chosen: readonly File[], termOfNew: string) => {
    setDone(null);
    setShown(chosen.length === 0 ? null : ((await planning.run(toForm(chosen, termOfNew)))?.value ?? null));
  };
  const apply = async () => {
    if (shown === null) return;
    const result = await importing.run(toForm(files, term), shown.fingerprint);
    // Refused: the ground may have changed, so what would happen now is worked out and shown again.
    if (result === null) return work(files, term);
    setShown(null);
    setFiles([]);
    setDone(result.value);
  };
  return (
    <div className="stack">
      <section className={`${panel.root} no-print`}>
        <div className={panel.two}>
          <FileInput
            multiple
            label="Roster"
            description="One CSV file, or the CSV files or the zip of a OneRoster export"
            placeholder="Choose one or more files"
            accept=".csv,.zip,text/csv,application/zip"
            clearable
            clearButtonProps={{ "aria-label": "Take the files away" }}
            value={files}
            onChange={(chosen) => {
              setFiles(chosen);
              void work(chosen, term);
            }}
          />
          <TextInput
            label="Term of new sections"
            description="For sections that the roster makes without saying when"
            maxLength={60}
            value={term}
            onChange={(event) => setTerm(event.currentTarget.value)}
            onBlur={() => files.length > 0 && shown !== null && work(files, term)}
          />
        </div>
        {planning.failure !== null && (
          <ErrorNote
            message={planning.failure.message}
            next="Mend the file where it says, then choose it again."
            faults={planning.failure.faults}
          />
        )}
      </section>
      {shown !== null && (
        <section className={panel.root}>
          <RosterPlanTable plan={shown} />
          {importing.failure !== null && (
            <ErrorNote
              message={importing.failure.message}
              kept="Nothing was written. Above is what would happen now."
              faults={importing.failure.faults}
            />
          )}
          <div>
            <Button
              loading={planning.pending || importing.pending}
              disabled={shown.faults.length > 0}
              onClick={apply}
            >
              Bring the roster in
            </Button>
          </div>
        </section>
      )}
      {done !== null && <RosterDone done={done} createLinks={createLinks} />}
    </div>
  );
}
