"use client";

import { Button, Group } from "@mantine/core";
import { useRouter } from "next/navigation";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import cells from "@/components/staff/cells.module.css";
import { NewPasswordButton } from "@/components/staff/new-password-button";
import { ROLE_LABELS } from "@/components/staff/role-labels";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { ErrorNote } from "@/components/ui/error-note";
import { StatusBadge } from "@/components/ui/status-badge";
import { When } from "@/components/ui/when";
import type { PersonRow } from "@/lib/plot/staff-view";

export interface PersonActions {
  setActive: (input: { userId: string; active: boolean }) => Promise<ActionResult>;
  resetPassword: (input: { userId: string; password: string }) => Promise<ActionResult>;
}

interface PersonButtonsProps {
  person: PersonRow;
  isSelf: boolean;
  onActive: (person: PersonRow, active: boolean) => Promise<void>;
  resetPassword: PersonActions["resetPassword"];
}

function PersonButtons({ person, isSelf, onActive, resetPassword }: PersonButtonsProps) {
  if (isSelf) return <span className="muted">You</span>;
  return (
    <Group gap="xs" wrap="nowrap" justify="flex-end">
      <NewPasswordButton person={person} reset={resetPassword} />
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
    </Group>
  );
}

const BASE_COLUMNS: readonly DataColumn<PersonRow>[] = [
  {
    key: "name",
    header: "Name",
    value: ({ name }) => name,
    cell: ({ name }) => <span className={cells.line}>{name}</span>,
    isRowHeader: true,
  },
  { key: "login", header: "Sign-in name", value: ({ login }) => login },
  { key: "role", header: "Role", value: ({ role }) => ROLE_LABELS[role] },
  {
    key: "sections",
    header: "Sections",
    value: ({ sections }) => sections.join(", "),
    cell: ({ sections }) => <span className={cells.words}>{sections.join(", ")}</span>,
  },
  {
    key: "active",
    header: "Account",
    value: ({ active }) => (active ? "Active" : "Deactivated"),
    cell: ({ active }) => (
      <StatusBadge tone={active ? "ready" : "idle"}>{active ? "Active" : "Deactivated"}</StatusBadge>
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
  },
];

export interface PeopleTableProps extends PersonActions {
  people: readonly PersonRow[];
  viewerId: string;
}

/** Everybody with an account; a director lets them in or no more, and gives new passwords. */
export function PeopleTable({ people, viewerId, setActive, resetPassword }: PeopleTableProps) {
  const router = useRouter();
  const { run, failure } = useAction(setActive);
  const onActive = async ({ userId }: PersonRow, active: boolean) => {
    await run({ userId, active });
    router.refresh();
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
        />
      ),
      align: "end",
    },
  ];
  return (
    <div className="stack">
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
