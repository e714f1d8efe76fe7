"use client";

import { Button, Group, Modal, PasswordInput } from "@mantine/core";
import { useDisclosure } from "@mantine/hooks";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import panel from "@/components/staff/panel.module.css";
import { ErrorNote } from "@/components/ui/error-note";
import { PasswordSchema } from "@/lib/plot/account-input";
import type { PersonRow } from "@/lib/plot/staff-view";

export interface NewPasswordButtonProps {
  person: PersonRow;
  reset: (input: { userId: string; password: string }) => Promise<ActionResult>;
}

/** Gives somebody who cannot sign in a new password, which ends their sessions. */
export function NewPasswordButton({ person, reset }: NewPasswordButtonProps) {
  const [opened, dialog] = useDisclosure(false);
  const [password, setPassword] = useState("");
  const [done, setDone] = useState(false);
  const { run, pending, failure } = useAction(reset);
  const isShort = !PasswordSchema.safeParse(password).success;
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (isShort || (await run({ userId: person.userId, password })) === null) return;
    setPassword("");
    setDone(true);
  };
  const open = () => {
    setDone(false);
    dialog.open();
  };
  return (
    <>
      <Button size="xs" variant="subtle" onClick={open}>
        New password
      </Button>
      <Modal
        opened={opened}
        onClose={dialog.close}
        title={`New password for ${person.name}`}
        closeButtonProps={{ "aria-label": "Close" }}
      >
        {done ? (
          <div className={panel.form}>
            <p role="status">
              The password is set and {person.name} is signed out everywhere. Tell it to them in person; they
              can change it under their name.
            </p>
            <Group justify="flex-end">
              <Button onClick={dialog.close}>Close</Button>
            </Group>
          </div>
        ) : (
          <form onSubmit={submit} className={panel.form}>
            <PasswordInput
              label="New password"
              description="Ten characters or more. They are signed out everywhere."
              autoComplete="new-password"
              data-autofocus
              value={password}
              onChange={(event) => setPassword(event.currentTarget.value)}
              visibilityToggleButtonProps={{ "aria-label": "Show the password", tabIndex: 0 }}
            />
            {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
            <Group justify="flex-end" gap="sm">
              <Button variant="subtle" onClick={dialog.close}>
                Cancel
              </Button>
              <Button type="submit" loading={pending} disabled={isShort}>
                Set the password
              </Button>
            </Group>
          </form>
        )}
      </Modal>
    </>
  );
}
