"use client";

import { Button, MultiSelect, TextInput } from "@mantine/core";
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import panel from "@/components/staff/panel.module.css";
import { ErrorNote } from "@/components/ui/error-note";
import type { PersonRow } from "@/lib/plot/staff-view";

export interface SectionInput {
  readonly name: string;
  readonly term: string;
  readonly instructorIds: readonly string[];
}

export interface SectionFormProps {
  people: readonly PersonRow[];
  create: (input: SectionInput) => Promise<ActionResult<{ sectionId: string }>>;
}

/** Makes a section: its name, its term and who teaches it. Leads to its enrolment. */
export function SectionForm({ people, create }: SectionFormProps) {
  const router = useRouter();
  const [input, setInput] = useState<SectionInput>({ name: "", term: "", instructorIds: [] });
  const [asked, setAsked] = useState(false);
  const { run, pending, failure } = useAction(create);
  const set = (part: Partial<SectionInput>) => setInput((before) => ({ ...before, ...part }));
  const missing = (value: string, words: string) => (asked && value.trim() === "" ? words : undefined);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (input.name.trim() === "" || input.term.trim() === "") return;
    const made = await run(input);
    if (made !== null) router.push(`/people/sections/${made.value.sectionId}`);
  };
  return (
    <form onSubmit={submit} noValidate className={panel.form}>
      <TextInput
        label="Name"
        required
        maxLength={120}
        autoComplete="off"
        value={input.name}
        error={missing(input.name, "Give the section a name")}
        onChange={(event) => set({ name: event.currentTarget.value })}
      />
      <TextInput
        label="Term"
        description="As your school names it: Autumn 2026"
        required
        maxLength={60}
        value={input.term}
        error={missing(input.term, "Say which term")}
        onChange={(event) => set({ term: event.currentTarget.value })}
      />
      <MultiSelect
        label="Taught by"
        description="Instructors see and act on the sections that they teach"
        placeholder={input.instructorIds.length === 0 ? "No one yet" : ""}
        searchable
        data={people
          .filter(({ role, active }) => role === "instructor" && active)
          .map(({ userId, name }) => ({ value: userId, label: name }))}
        value={[...input.instructorIds]}
        onChange={(instructorIds) => set({ instructorIds })}
        clearButtonProps={{ "aria-label": "Clear instructors" }}
      />
      {failure !== null && (
        <ErrorNote message={failure.message} kept="What you entered is still here." faults={failure.faults} />
      )}
      <div>
        <Button type="submit" loading={pending}>
          Make the section
        </Button>
      </div>
    </form>
  );
}
