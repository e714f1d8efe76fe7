"use client";

import { Button, FileInput, TextInput } from "@mantine/core";
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import panel from "@/components/staff/panel.module.css";
import { ErrorNote } from "@/components/ui/error-note";
import { type Fault, isAppError } from "@/lib/base/app-error";
import { readExerciseSet } from "@/lib/exchange/read-exercise-set";
import type { ExerciseSet } from "@/lib/plot/exercise-set";

export interface ImportSetFormProps {
  importSet: (input: { json: unknown; trayName: string }) => Promise<ActionResult<{ trayId: string }>>;
}

type Check =
  | { readonly kind: "none" }
  | { readonly kind: "good"; readonly set: ExerciseSet }
  | { readonly kind: "refused"; readonly message: string; readonly faults: readonly Fault[] };

/** Reads and judges a file in the browser, before anything is sent. */
async function checkFile(file: File): Promise<Check> {
  try {
    return { kind: "good", set: readExerciseSet(await file.text()).set };
  } catch (thrown) {
    if (isAppError(thrown)) return { kind: "refused", message: thrown.message, faults: thrown.faults };
    return { kind: "refused", message: "The file could not be read.", faults: [] };
  }
}

function SetFacts({ set }: { set: ExerciseSet }) {
  const marks = set.stones.reduce((sum, stone) => sum + stone.marks.length, 0);
  const decoys = set.stones.reduce((sum, stone) => sum + stone.decoys.length, 0);
  const facts = [
    ["Title", set.title],
    ["Stones", String(set.stones.length)],
    ["Reference marks", String(marks)],
    ["Decoys", String(decoys)],
  ] as const;
  return (
    <dl className={panel.facts} aria-label="What the file holds">
      {facts.map(([what, value]) => (
        <div key={what}>
          <dt>{what}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Brings an exercise set file in as a new tray: checked first with the path to each fault, then all or nothing. */
export function ImportSetForm({ importSet }: ImportSetFormProps) {
  const router = useRouter();
  const [file, setFile] = useState<File | null>(null);
  const [check, setCheck] = useState<Check>({ kind: "none" });
  const [trayName, setTrayName] = useState("");
  const { run, pending, failure, clearFailure } = useAction(importSet);

  const choose = async (chosen: File | null) => {
    setFile(chosen);
    clearFailure();
    const next: Check = chosen === null ? { kind: "none" } : await checkFile(chosen);
    setCheck(next);
    if (next.kind === "good") setTrayName(next.set.title.slice(0, 120));
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (check.kind !== "good" || trayName.trim() === "") return;
    const made = await run({ json: check.set, trayName });
    if (made !== null) router.push(`/trays/${made.value.trayId}`);
  };

  return (
    <form onSubmit={submit} noValidate className={panel.form}>
      <FileInput
        label="Exercise set file"
        description="A .json file in Loupework’s exercise set format"
        placeholder="Choose a file"
        accept="application/json,.json"
        clearable
        clearButtonProps={{ "aria-label": "Take the file away" }}
        value={file}
        onChange={choose}
      />
      {check.kind === "refused" && (
        <ErrorNote
          message={check.message}
          next="Mend the file where the paths below point, then choose it again."
          faults={check.faults}
        />
      )}
      {check.kind === "good" && (
        <>
          <SetFacts set={check.set} />
          <TextInput
            label="Name of the new tray"
            required
            maxLength={120}
            value={trayName}
            error={trayName.trim() === "" ? "Give the tray a name" : undefined}
            onChange={(event) => setTrayName(event.currentTarget.value)}
          />
        </>
      )}
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
      <div>
        <Button type="submit" loading={pending} disabled={check.kind !== "good"}>
          Bring it in as a new tray
        </Button>
      </div>
    </form>
  );
}
