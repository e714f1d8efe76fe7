"use client";

import { Button, PasswordInput } from "@mantine/core";
import { type FormEvent, useEffect, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { ErrorNote } from "@/components/ui/error-note";
import { LinkButton } from "@/components/ui/link-button";
import type { LinkHolder } from "@/lib/plot/access-link";
import { PasswordSchema } from "@/lib/plot/account-input";

export interface LinkPasswordFormProps {
  read: (token: string) => Promise<ActionResult<LinkHolder>>;
  redeem: (input: { token: string; password: string }) => Promise<ActionResult<{ login: string }>>;
}

/** Sets a password by a one-time link; the token stands behind the # of the address. */
export function LinkPasswordForm({ read, redeem }: LinkPasswordFormProps) {
  const [token, setToken] = useState("");
  const [holder, setHolder] = useState<LinkHolder | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const [password, setPassword] = useState("");
  const [login, setLogin] = useState<string | null>(null);
  const { run, pending, failure } = useAction(redeem);

  useEffect(() => {
    const found = window.location.hash.slice(1);
    setToken(found);
    read(found)
      .then((answer) => (answer.ok ? setHolder(answer.value) : setRefused(answer.message)))
      .catch(() => setRefused("The server did not answer. Load the page again."));
  }, [read]);

  const isShort = !PasswordSchema.safeParse(password).success;
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (isShort) return;
    const done = await run({ token, password });
    if (done !== null) setLogin(done.value.login);
  };

  if (login !== null) {
    return (
      <div className="stack">
        <p role="status">
          Your password is set. Your sign-in name is <strong>{login}</strong>.
        </p>
        <div>
          <LinkButton href="/sign-in">Sign in</LinkButton>
        </div>
      </div>
    );
  }
  if (refused !== null) return <ErrorNote message={refused} />;
  if (holder === null) return <p role="status">Looking at the link…</p>;
  return (
    <form onSubmit={submit} className="stack" noValidate>
      <p>
        {holder.kind === "invitation" ? "Welcome" : "A new password for"} <strong>{holder.name}</strong>. You
        sign in as <strong>{holder.login}</strong>.
      </p>
      <input type="text" name="username" autoComplete="username" value={holder.login} readOnly hidden />
      <PasswordInput
        label="New password"
        description="Ten characters or more"
        autoComplete="new-password"
        value={password}
        onChange={(event) => setPassword(event.currentTarget.value)}
        visibilityToggleButtonProps={{ "aria-label": "Show the password", tabIndex: 0 }}
      />
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
      <div>
        <Button type="submit" loading={pending} disabled={isShort}>
          Set the password
        </Button>
      </div>
    </form>
  );
}
