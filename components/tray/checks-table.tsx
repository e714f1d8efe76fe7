"use client";

import { Button } from "@mantine/core";
import { useMemo } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import cells from "@/components/staff/cells.module.css";
import { toVerdictWords } from "@/components/tray/to-verdict-words";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { ErrorNote } from "@/components/ui/error-note";
import { StatusBadge } from "@/components/ui/status-badge";
import { useRefresh } from "@/components/ui/use-refresh";
import { When } from "@/components/ui/when";
import type { StoneCheckRow } from "@/lib/plot/staff-view";
import { MISMATCHES } from "@/lib/plot/stone-check";

const isMismatch = ({ outcome }: StoneCheckRow) => MISMATCHES.some((one) => one === outcome);
const toTitle = ({ verdict, label, isKeptBack }: StoneCheckRow) =>
  isKeptBack
    ? "Kept from you while you read a stone of this tray blind"
    : verdict === null
      ? "Being worked out"
      : toVerdictWords(verdict, label).title;

function buildColumns(settle: (checkId: string) => void): readonly DataColumn<StoneCheckRow>[] {
  return [
    {
      key: "when",
      header: "When",
      value: ({ madeAt }) => madeAt,
      cell: ({ madeAt }) => (
        <span className={cells.line}>
          <When iso={madeAt} />
        </span>
      ),
    },
    {
      key: "label",
      header: "Label",
      value: ({ label }) => label,
      cell: ({ label }) => label ?? <span className="muted">none</span>,
      isRowHeader: true,
    },
    {
      key: "verdict",
      header: "What it says",
      value: toTitle,
      cell: (row) => (
        <StatusBadge tone={row.verdict === null ? "idle" : toVerdictWords(row.verdict, row.label).tone}>
          {toTitle(row)}
        </StatusBadge>
      ),
    },
    {
      key: "evidence",
      header: "From",
      value: ({ features, weightCt }) => `${features} features${weightCt === null ? "" : `, ${weightCt} ct`}`,
    },
    { key: "by", header: "By", value: ({ byName }) => byName },
    {
      key: "settled",
      header: "Settled",
      value: ({ settledBy }) => settledBy,
      cell: (row) =>
        row.settledBy !== null ? (
          row.settledBy
        ) : isMismatch(row) ? (
          <Button size="compact-sm" variant="outline" onClick={() => settle(row.checkId)}>
            Settled
          </Button>
        ) : (
          <span className="muted">–</span>
        ),
    },
  ];
}

export interface ChecksTableProps {
  checks: readonly StoneCheckRow[];
  settle: (checkId: string) => Promise<ActionResult>;
}

/** The last hand-in checks of a tray; one that contradicts a label stays flagged until somebody says that it is settled. */
export function ChecksTable({ checks, settle }: ChecksTableProps) {
  const refresh = useRefresh();
  const { run, failure } = useAction(settle);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the action is the page's own and stays the same.
  const columns = useMemo(
    () =>
      buildColumns(async (checkId) => {
        await run(checkId);
        refresh();
      }),
    [refresh],
  );
  if (checks.length === 0) return null;
  return (
    <div className="stack" id="checks">
      {failure !== null && <ErrorNote message={failure.message} />}
      <DataTable
        caption="Checks of this tray"
        rows={checks}
        columns={columns}
        rowKey={({ checkId }) => checkId}
        csvName="hand-in checks"
      />
    </div>
  );
}
