"use client";

import { Button, PasswordInput, TextInput } from "@mantine/core";
import { signIn } from "next-auth/react";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { ErrorNote } from "@/components/ui/error-note";

export interface FirstDirectorInput {
  readonly name: string;
  readonly login: string;
  readonly password: string;
}

/** The first account of a program that has none; signs in with it at once. */
export function FirstDirectorForm({
  create,
}: {
  create: (input: FirstDirectorInput) => Promise<ActionResult<unknown>>;
}) {
  const [input, setInput] = useState<FirstDirectorInput>({ name: "", login: "", password: "" });
  const [again, setAgain] = useState("");
  const { run, pending, failure } = useAction(create);
  const differs = again !== "" && again !== input.password;
  const set = (part: Partial<FirstDirectorInput>) => setInput((before) => ({ ...before, ...part }));

  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (again !== input.password) return;
    if ((await run(input)) === null) return;
    await signIn("credentials", { login: input.login, password: input.password, redirect: false });
    window.location.assign("/");
  };

  return (
    <form onSubmit={submit} className="stack">
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
      <TextInput
        label="Your name"
        description="As it is shown to colleagues and students"
        autoComplete="name"
        required
        withAsterisk={false}
        value={input.name}
        onChange={(event) => set({ name: event.currentTarget.value })}
      />
      <TextInput
        label="Sign-in name"
        autoComplete="username"
        autoCapitalize="none"
        spellCheck={false}
        required
        withAsterisk={false}
        value={input.login}
        onChange={(event) => set({ login: event.currentTarget.value })}
      />
      <PasswordInput
        label="Password"
        description="Ten characters or more"
        autoComplete="new-password"
        minLength={10}
        required
        withAsterisk={false}
        value={input.password}
        onChange={(event) => set({ password: event.currentTarget.value })}
        visibilityToggleButtonProps={{ "aria-label": "Show the password", tabIndex: 0 }}
      />
      <PasswordInput
        label="Password again"
        autoComplete="new-password"
        required
        withAsterisk={false}
        value={again}
        error={differs ? "The two passwords differ" : undefined}
        onChange={(event) => setAgain(event.currentTarget.value)}
        visibilityToggleButtonProps={{ "aria-label": "Show the second password", tabIndex: 0 }}
      />
      <Button type="submit" loading={pending}>
        Make the account
      </Button>
    </form>
  );
}
