import cells from "@/components/staff/cells.module.css";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { ErrorNote } from "@/components/ui/error-note";
import { StatusBadge, type StatusTone } from "@/components/ui/status-badge";
import type { SetImportPlan, SetStonePlan } from "@/lib/plot/set-import";

const STATES: Readonly<Record<SetStonePlan["state"], { tone: StatusTone; words: string }>> = {
  made: { tone: "ready", words: "Would be made" },
  changed: { tone: "active", words: "Would be changed" },
  unchanged: { tone: "idle", words: "As it is" },
  refused: { tone: "bad", words: "Refused" },
};

const COLUMNS: readonly DataColumn<SetStonePlan>[] = [
  { key: "label", header: "Stone", value: ({ label }) => label, isRowHeader: true },
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

/** What an import would do, stone by stone, before anything is written. */
export function SetPlanTable({ plan }: { plan: SetImportPlan }) {
  const { stones, terms, kept, faults } = plan;
  return (
    <>
      <DataTable
        caption="What would happen"
        rows={stones}
        columns={COLUMNS}
        rowKey={({ path }) => path}
        csvName="import"
        canFilter={stones.length > 12}
      />
      {terms.length > 0 && <p>With it change {terms.join(", ")}.</p>}
      {kept.length > 0 && <p className="muted">Not in the file, and left as they are: {kept.join(", ")}.</p>}
      {faults.length > 0 && (
        <ErrorNote
          message="The set is refused as a whole; nothing was written."
          next="Mend the file where the paths point, then choose it again."
          faults={faults}
        />
      )}
    </>
  );
}
