"use client";

import { Button, PasswordInput, TextInput } from "@mantine/core";
import { signIn } from "next-auth/react";
import { type FormEvent, useState } from "react";
import { ErrorNote } from "@/components/ui/error-note";

const WRONG = "That sign-in name and password do not go together.";
const UNREACHED = "The server did not answer. Nothing was lost; try again in a moment.";

/** Asks for name and password. Where it leads to is the server's to say: the start page sends each role home. */
export function SignInForm() {
  const [login, setLogin] = useState("");
  const [password, setPassword] = useState("");
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<string | null>(null);

  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setBusy(true);
    setFailure(null);
    try {
      const answer = await signIn("credentials", { login, password, redirect: false });
      if (answer?.ok && !answer.error) {
        window.location.assign("/");
        return;
      }
      setFailure(answer?.error && answer.error !== "CredentialsSignin" ? answer.error : WRONG);
    } catch {
      setFailure(UNREACHED);
    }
    setBusy(false);
  };

  return (
    <form onSubmit={submit} className="stack">
      {failure !== null && <ErrorNote message={failure} />}
      <TextInput
        label="Sign-in name"
        name="login"
        autoComplete="username"
        autoCapitalize="none"
        spellCheck={false}
        size="md"
        required
        withAsterisk={false}
        value={login}
        onChange={(event) => setLogin(event.currentTarget.value)}
      />
      <PasswordInput
        label="Password"
        name="password"
        autoComplete="current-password"
        size="md"
        required
        withAsterisk={false}
        value={password}
        onChange={(event) => setPassword(event.currentTarget.value)}
        visibilityToggleButtonProps={{ "aria-label": "Show the password", tabIndex: 0 }}
      />
      <Button type="submit" size="md" loading={busy}>
        Sign in
      </Button>
    </form>
  );
}
