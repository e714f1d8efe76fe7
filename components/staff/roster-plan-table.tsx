import cells from "@/components/staff/cells.module.css";
import { ROLE_LABELS } from "@/components/staff/role-labels";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { ErrorNote } from "@/components/ui/error-note";
import { StatusBadge, type StatusTone } from "@/components/ui/status-badge";
import type { RosterPlan, RosterRow, RosterState } from "@/lib/plot/roster";

const STATES: Readonly<Record<RosterState, { tone: StatusTone; words: string }>> = {
  made: { tone: "ready", words: "Would be added" },
  changed: { tone: "active", words: "Would be changed" },
  same: { tone: "idle", words: "Already so" },
  "left-out": { tone: "idle", words: "Left out" },
  refused: { tone: "bad", words: "Refused" },
};

const COLUMNS: readonly DataColumn<RosterRow>[] = [
  {
    key: "path",
    header: "Where",
    value: ({ path }) => path,
    cell: ({ path }) => <span className={cells.line}>{path}</span>,
  },
  { key: "name", header: "Name", value: ({ name }) => name, isRowHeader: true },
  { key: "login", header: "Sign-in name", value: ({ login }) => login },
  { key: "role", header: "Role", value: ({ role }) => (role === null ? "" : ROLE_LABELS[role]) },
  {
    key: "state",
    header: "What would happen",
    value: ({ state }) => STATES[state].words,
    cell: ({ state }) => <StatusBadge tone={STATES[state].tone}>{STATES[state].words}</StatusBadge>,
  },
  {
    key: "changes",
    header: "In particular",
    value: ({ changes }) => changes.join("; "),
    cell: ({ changes }) => <span className={cells.words}>{changes.join("; ")}</span>,
  },
];

/** What a roster would do, row by row, before anything is written. */
export function RosterPlanTable({ plan }: { plan: RosterPlan }) {
  const { rows, sections, faults } = plan;
  return (
    <>
      {sections.length > 0 && (
        <p>
          Sections that would be made: {sections.map(({ name, term }) => `${name} (${term})`).join(", ")}.
        </p>
      )}
      <DataTable
        caption="What would happen"
        rows={rows}
        columns={COLUMNS}
        rowKey={({ path }) => path}
        csvName="roster"
      />
      <p className="muted">Nobody is taken out of a section, and nobody’s role is changed.</p>
      {faults.length > 0 && (
        <ErrorNote
          message="The roster is refused as a whole; nothing was written."
          next="Mend the file where it says, then choose it again."
          faults={faults}
        />
      )}
    </>
  );
}
