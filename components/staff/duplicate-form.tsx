"use client";

import { Button, Select, TextInput } from "@mantine/core";
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { InstantInput } from "@/components/staff/instant-input";
import panel from "@/components/staff/panel.module.css";
import { ErrorNote } from "@/components/ui/error-note";
import { When } from "@/components/ui/when";
import type { ExerciseRow, SectionRow } from "@/lib/plot/staff-view";

export interface DuplicateFormProps {
  exercise: ExerciseRow;
  sections: readonly SectionRow[];
  duplicate: (input: {
    exerciseId: string;
    sectionId: string;
    title: string;
    opensAt: string;
  }) => Promise<ActionResult<{ exerciseId: string }>>;
}

/** Sets a copy of an exercise for a section, every date moved by as much as the opening. */
export function DuplicateForm({ exercise, sections, duplicate }: DuplicateFormProps) {
  const router = useRouter();
  const [sectionId, setSectionId] = useState<string | null>(null);
  const [title, setTitle] = useState(exercise.title);
  const [opensAt, setOpensAt] = useState(exercise.opensAt);
  const { run, pending, failure } = useAction(duplicate);
  const shift = (iso: string) =>
    new Date(Date.parse(iso) - Date.parse(exercise.opensAt) + Date.parse(opensAt)).toISOString();
  const isReady = sectionId !== null && title.trim() !== "" && opensAt !== "";
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (sectionId === null || !isReady) return;
    const done = await run({ exerciseId: exercise.exerciseId, sectionId, title, opensAt });
    if (done !== null) router.push(`/exercises/${done.value.exerciseId}`);
  };
  return (
    <form onSubmit={submit} className={panel.form} noValidate>
      <Select
        label="For which section"
        placeholder="Choose a section"
        required
        data={sections.map((section) => ({
          value: section.sectionId,
          label: `${section.name}, ${section.term}`,
        }))}
        value={sectionId}
        onChange={setSectionId}
      />
      <TextInput
        label="Title"
        required
        maxLength={200}
        value={title}
        onChange={(event) => setTitle(event.currentTarget.value)}
      />
      <InstantInput label="Opens" required value={opensAt} onChange={setOpensAt} />
      {opensAt !== "" && (
        <p className="muted">
          Then it is due <When iso={shift(exercise.dueAt)} />
          {exercise.closesAt !== null && (
            <>
              {" "}
              and closes <When iso={shift(exercise.closesAt)} />
            </>
          )}
          , and all other dates move along. Stones, rules and rubric are the same; nobody has begun it.
        </p>
      )}
      {failure !== null && (
        <ErrorNote message={failure.message} kept="Nothing was set." faults={failure.faults} />
      )}
      <div>
        <Button type="submit" loading={pending} disabled={!isReady}>
          Set the copy
        </Button>
      </div>
    </form>
  );
}
