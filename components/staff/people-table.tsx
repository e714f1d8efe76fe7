"use client";

import { Button, Group, Menu, Modal } from "@mantine/core";
import { notifications } from "@mantine/notifications";
import { useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import cells from "@/components/staff/cells.module.css";
import { NewPasswordButton } from "@/components/staff/new-password-button";
import { PersonLinkButton } from "@/components/staff/person-link-button";
import { ROLE_LABELS } from "@/components/staff/role-labels";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { ErrorNote } from "@/components/ui/error-note";
import { StatusBadge } from "@/components/ui/status-badge";
import { useRefresh } from "@/components/ui/use-refresh";
import { When } from "@/components/ui/when";
import type { MadeLink } from "@/lib/plot/access-link";
import type { PersonRow } from "@/lib/plot/staff-view";

export interface PersonActions {
  setActive: (input: { userId: string; active: boolean }) => Promise<ActionResult>;
  resetPassword: (input: { userId: string; password: string }) => Promise<ActionResult>;
  createLinks: (userIds: readonly string[]) => Promise<ActionResult<MadeLink[]>>;
  erase: (userId: string) => Promise<ActionResult>;
}

interface PersonButtonsProps {
  person: PersonRow;
  isSelf: boolean;
  onActive: (person: PersonRow, active: boolean) => Promise<void>;
  resetPassword: PersonActions["resetPassword"];
  createLinks: PersonActions["createLinks"];
  onErase: (person: PersonRow) => Promise<boolean>;
}

/** What is held of a person: handed out, or, of a student, erased. */
function PersonDataMenu({ person, onErase }: Pick<PersonButtonsProps, "person" | "onErase">) {
  const [asked, setAsked] = useState(false);
  const [busy, setBusy] = useState(false);
  const erase = async () => {
    setBusy(true);
    if (await onErase(person)) {
      setAsked(false);
      notifications.show({ message: `${person.name} is erased. Plots and results stay without the name.` });
    }
    setBusy(false);
  };
  return (
    <>
      <Menu position="bottom-end" shadow="md">
        <Menu.Target>
          <Button size="xs" variant="subtle" aria-label={`Data of ${person.name}`}>
            Data
          </Button>
        </Menu.Target>
        <Menu.Dropdown>
          <Menu.Item component="a" href={`/api/people/${person.userId}/data.json`} download>
            Export what is held (JSON)
          </Menu.Item>
          {person.role === "student" && (
            <Menu.Item c="var(--lw-bad)" onClick={() => setAsked(true)}>
              Erase
            </Menu.Item>
          )}
        </Menu.Dropdown>
      </Menu>
      <Modal
        opened={asked}
        onClose={() => setAsked(false)}
        title={`Erase ${person.name} for good?`}
        closeButtonProps={{ "aria-label": "Close" }}
      >
        <p>
          Name and sign-in name go, notes to them and their sign-ins are removed, and they are signed out.
          Their plots and results stay as an erased student’s, so that the statistics stay what they are. This
          cannot be undone.
        </p>
        <Group justify="flex-end" mt="lg" gap="sm">
          <Button variant="subtle" onClick={() => setAsked(false)} data-autofocus>
            Cancel
          </Button>
          <Button color="red" loading={busy} onClick={erase}>
            Erase for good
          </Button>
        </Group>
      </Modal>
    </>
  );
}

function PersonButtons(props: PersonButtonsProps) {
  const { person, isSelf, onActive, resetPassword, createLinks, onErase } = props;
  if (isSelf) return <span className="muted">You</span>;
  if (person.isErased) return null;
  return (
    <div className={cells.actions}>
      {person.active && (
        <PersonLinkButton
          userIds={[person.userId]}
          label={person.isInvited ? "Invitation" : "Reset link"}
          name={person.name}
          createLinks={createLinks}
        />
      )}
      <NewPasswordButton person={person} reset={resetPassword} />
      <PersonDataMenu person={person} onErase={onErase} />
      {person.active ? (
        <ConfirmButton
          danger
          variant="subtle"
          size="xs"
          question={`Deactivate ${person.name}?`}
          detail={
            <p>
              They are signed out at once and can no longer sign in. Their work stays. The account can be
              reactivated.
            </p>
          }
          confirmLabel="Deactivate"
          onConfirm={() => onActive(person, false)}
        >
          Deactivate
        </ConfirmButton>
      ) : (
        <Button size="xs" variant="outline" onClick={() => onActive(person, true)}>
          Reactivate
        </Button>
      )}
    </div>
  );
}

function toAccountWords({ active, isInvited, isErased }: PersonRow): string {
  if (isErased) return "Erased";
  if (!active) return "Deactivated";
  return isInvited ? "No password yet" : "Active";
}

const BASE_COLUMNS: readonly DataColumn<PersonRow>[] = [
  {
    key: "name",
    header: "Name",
    value: ({ name }) => name,
    cell: ({ name }) => <span className={cells.line}>{name}</span>,
    isRowHeader: true,
  },
  { key: "login", header: "Sign-in name", value: ({ login }) => login, hideBelow: "tablet" },
  { key: "role", header: "Role", value: ({ role }) => ROLE_LABELS[role], hideBelow: "tablet" },
  {
    key: "sections",
    header: "Sections",
    value: ({ sections }) => sections.join(", "),
    cell: ({ sections }) => <span className={cells.words}>{sections.join(", ")}</span>,
    hideBelow: "tablet",
  },
  {
    key: "active",
    header: "Account",
    value: toAccountWords,
    cell: (person) => (
      <StatusBadge tone={person.active && !person.isInvited ? "ready" : "idle"}>
        {toAccountWords(person)}
      </StatusBadge>
    ),
  },
  {
    key: "lastSignInAt",
    header: "Last signed in",
    value: ({ lastSignInAt }) => lastSignInAt,
    cell: ({ lastSignInAt }) =>
      lastSignInAt === null ? (
        <span className="muted">Never</span>
      ) : (
        <span className={cells.line}>
          <When iso={lastSignInAt} />
        </span>
      ),
    hideBelow: "laptop",
  },
];

export interface PeopleTableProps extends PersonActions {
  people: readonly PersonRow[];
  viewerId: string;
}

/** Everybody with an account; a director lets them in or no more, and gives new passwords. */
export function PeopleTable(props: PeopleTableProps) {
  const { people, viewerId, setActive, resetPassword, createLinks, erase } = props;
  const refresh = useRefresh();
  const { run, failure } = useAction(setActive);
  const erasing = useAction(erase);
  const onErase = async ({ userId }: PersonRow) => {
    const done = await erasing.run(userId);
    refresh();
    return done !== null;
  };
  const onActive = async ({ userId }: PersonRow, active: boolean) => {
    await run({ userId, active });
    refresh();
  };
  const columns: readonly DataColumn<PersonRow>[] = [
    ...BASE_COLUMNS,
    {
      key: "do",
      header: "Change",
      value: () => null,
      cell: (person) => (
        <PersonButtons
          person={person}
          isSelf={person.userId === viewerId}
          onActive={onActive}
          resetPassword={resetPassword}
          createLinks={createLinks}
          onErase={onErase}
        />
      ),
      align: "end",
    },
  ];
  return (
    <div className="stack">
      {erasing.failure !== null && (
        <ErrorNote
          message={erasing.failure.message}
          kept="Nobody was erased."
          faults={erasing.failure.faults}
        />
      )}
      {failure !== null && (
        <ErrorNote message={failure.message} kept="Nothing was changed." faults={failure.faults} />
      )}
      <DataTable
        caption="Accounts"
        rows={people}
        columns={columns}
        rowKey={({ userId }) => userId}
        csvName="people"
        initialSort={{ key: "name", down: false }}
      />
    </div>
  );
}
