"use client";

import { Button, MultiSelect, PasswordInput, Radio, TextInput } from "@mantine/core";
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { toSentence } from "@/components/forms/to-sentence";
import { useAction } from "@/components/forms/use-action";
import panel from "@/components/staff/panel.module.css";
import { ROLE_LABELS } from "@/components/staff/role-labels";
import { ErrorNote } from "@/components/ui/error-note";
import type { Fault } from "@/lib/base/app-error";
import { LoginSchema, PasswordSchema, PersonNameSchema } from "@/lib/plot/account-input";
import { ROLES, type Role, type SectionRow } from "@/lib/plot/staff-view";

export interface PersonInput {
  readonly name: string;
  readonly login: string;
  readonly role: Role;
  readonly password: string;
  readonly sectionIds: readonly string[];
}

const EMPTY: PersonInput = { name: "", login: "", role: "student", password: "", sectionIds: [] };

/** Faults at these are shown at the field itself. */
const FIELDS = ["name", "login", "password"];

function findPersonFaults(input: PersonInput): Fault[] {
  const fields = [
    ["name", PersonNameSchema],
    ["login", LoginSchema],
    ["password", PasswordSchema],
  ] as const;
  return fields.flatMap(([path, schema]) => {
    const parsed = schema.safeParse(input[path]);
    return parsed.success ? [] : [{ path, message: parsed.error.issues[0]?.message ?? "cannot be taken" }];
  });
}

export interface PersonFormProps {
  sections: readonly SectionRow[];
  create: (input: PersonInput) => Promise<ActionResult>;
}

/** Adds a person: name, sign-in name, role, first password, sections. */
export function PersonForm({ sections, create }: PersonFormProps) {
  const router = useRouter();
  const [input, setInput] = useState(EMPTY);
  const [asked, setAsked] = useState(false);
  const { run, pending, failure } = useAction(create);
  const faults = asked ? [...findPersonFaults(input), ...(failure?.faults ?? [])] : [];
  const findAt = (path: string) => {
    const fault = faults.find((one) => one.path === path);
    return fault === undefined ? undefined : toSentence(fault.message);
  };
  const set = (part: Partial<PersonInput>) => setInput((before) => ({ ...before, ...part }));
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (findPersonFaults(input).length > 0) return;
    if ((await run(input)) !== null) router.push("/people");
  };
  return (
    <form onSubmit={submit} noValidate className={panel.form}>
      <TextInput
        label="Name"
        required
        autoComplete="off"
        maxLength={120}
        value={input.name}
        error={findAt("name")}
        onChange={(event) => set({ name: event.currentTarget.value })}
      />
      <TextInput
        label="Sign-in name"
        description="Small letters, digits, and . - _ between them"
        required
        autoComplete="off"
        maxLength={64}
        value={input.login}
        error={findAt("login")}
        onChange={(event) => set({ login: event.currentTarget.value })}
      />
      <Radio.Group
        label="Role"
        value={input.role}
        onChange={(value) => set({ role: ROLES.find((role) => role === value) ?? "student" })}
      >
        <div className={panel.inline}>
          {ROLES.map((role) => (
            <Radio key={role} value={role} label={ROLE_LABELS[role]} />
          ))}
        </div>
      </Radio.Group>
      {input.role !== "director" && sections.length > 0 && (
        <MultiSelect
          label={input.role === "student" ? "Enrolled in" : "Teaches"}
          placeholder={input.sectionIds.length === 0 ? "No section yet" : ""}
          data={sections.map(({ sectionId, name, term }) => ({
            value: sectionId,
            label: `${name}, ${term}`,
          }))}
          value={[...input.sectionIds]}
          onChange={(sectionIds) => set({ sectionIds })}
          clearButtonProps={{ "aria-label": "Clear sections" }}
        />
      )}
      <PasswordInput
        label="First password"
        description="Ten characters or more. Tell it to them in person; they can change it under their name."
        required
        autoComplete="new-password"
        value={input.password}
        error={findAt("password")}
        onChange={(event) => set({ password: event.currentTarget.value })}
        visibilityToggleButtonProps={{ "aria-label": "Show the password", tabIndex: 0 }}
      />
      {failure !== null && (
        <ErrorNote
          message={failure.message}
          kept="What you entered is still here, and no account was made."
          faults={failure.faults.filter(({ path }) => !FIELDS.includes(path))}
        />
      )}
      <div>
        <Button type="submit" loading={pending}>
          Add this person
        </Button>
      </div>
    </form>
  );
}
