"use client";

import { Button, Textarea, TextInput } from "@mantine/core";
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import panel from "@/components/staff/panel.module.css";
import { ErrorNote } from "@/components/ui/error-note";

interface TrayWords {
  readonly name: string;
  readonly notes: string;
}

export interface TrayFormProps {
  start: TrayWords;
  save: (input: TrayWords) => Promise<ActionResult<{ trayId: string }>>;
  submitLabel: string;
}

/** A tray's name and notes. Leads to the tray. */
export function TrayForm({ start, save, submitLabel }: TrayFormProps) {
  const router = useRouter();
  const [words, setWords] = useState(start);
  const [asked, setAsked] = useState(false);
  const { run, pending, failure } = useAction(save);
  const nameless = words.name.trim() === "";
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (nameless) return;
    const saved = await run(words);
    if (saved !== null) router.push(`/trays/${saved.value.trayId}`);
  };
  return (
    <form onSubmit={submit} noValidate className={panel.form}>
      <TextInput
        label="Name"
        required
        maxLength={120}
        autoComplete="off"
        value={words.name}
        error={asked && nameless ? "Give the tray a name" : undefined}
        onChange={(event) => setWords({ ...words, name: event.currentTarget.value })}
      />
      <Textarea
        label="Notes"
        description="For colleagues: where it is kept, what it is good for. Students do not read this."
        autosize
        minRows={3}
        maxLength={4000}
        value={words.notes}
        onChange={(event) => setWords({ ...words, notes: event.currentTarget.value })}
      />
      {failure !== null && (
        <ErrorNote message={failure.message} kept="What you entered is still here." faults={failure.faults} />
      )}
      <div>
        <Button type="submit" loading={pending}>
          {submitLabel}
        </Button>
      </div>
    </form>
  );
}
