"use client";

import { Button, PasswordInput } from "@mantine/core";
import { signOut } from "next-auth/react";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { ErrorNote } from "@/components/ui/error-note";

export interface PasswordInputs {
  readonly current: string;
  readonly next: string;
}

const EMPTY = { current: "", next: "", again: "" };
const toggle = (what: string) => ({ "aria-label": `Show the ${what} password`, tabIndex: 0 });

/** Changes one's own password; the present one is asked for again. Every session ends with it, this one too. */
export function PasswordForm({
  change,
}: {
  change: (input: PasswordInputs) => Promise<ActionResult<unknown>>;
}) {
  const [input, setInput] = useState(EMPTY);
  const [done, setDone] = useState(false);
  const { run, pending, failure } = useAction(change);
  const set = (part: Partial<typeof EMPTY>) => {
    setDone(false);
    setInput((before) => ({ ...before, ...part }));
  };

  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (input.again !== input.next) return;
    if ((await run({ current: input.current, next: input.next })) === null) return;
    setInput(EMPTY);
    setDone(true);
    await signOut({ callbackUrl: "/sign-in" });
  };

  return (
    <form onSubmit={submit} className="stack" style={{ maxWidth: "26rem" }}>
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
      <p role="status">{done ? "The password is changed. Sign in with it on each device." : ""}</p>
      <PasswordInput
        label="Present password"
        autoComplete="current-password"
        required
        withAsterisk={false}
        value={input.current}
        onChange={(event) => set({ current: event.currentTarget.value })}
        visibilityToggleButtonProps={toggle("present")}
      />
      <PasswordInput
        label="New password"
        description="Ten characters or more"
        autoComplete="new-password"
        minLength={10}
        required
        withAsterisk={false}
        value={input.next}
        onChange={(event) => set({ next: event.currentTarget.value })}
        visibilityToggleButtonProps={toggle("new")}
      />
      <PasswordInput
        label="New password again"
        autoComplete="new-password"
        required
        withAsterisk={false}
        value={input.again}
        error={input.again !== "" && input.again !== input.next ? "The two passwords differ" : undefined}
        onChange={(event) => set({ again: event.currentTarget.value })}
        visibilityToggleButtonProps={toggle("repeated")}
      />
      <div>
        <Button type="submit" loading={pending}>
          Change password
        </Button>
      </div>
    </form>
  );
}
