"use client";

import { Checkbox } from "@mantine/core";
import Link from "next/link";
import { useMemo } from "react";
import cells from "@/components/staff/cells.module.css";
import classes from "@/components/staff/tray-stones-table.module.css";
import { ViewFigure } from "@/components/stone/view-figure";
import { toWhereWords, WhereBadge } from "@/components/tray/where-badge";
import { type DataColumn, DataTable } from "@/components/ui/data-table";
import { StatusBadge } from "@/components/ui/status-badge";
import { CUT_LABELS } from "@/lib/gem/cut-name";
import { findSolid } from "@/lib/plot/find-plot-faults";
import type { TrayView } from "@/lib/plot/staff-view";
import { StoneBodySchema } from "@/lib/plot/stone";

type StoneRow = TrayView["stones"][number];

/** A stone's crown, small, so that a row is known at a glance; nothing where the numbers make no stone. */
function StoneThumb({ cut, proportions }: Pick<StoneRow, "cut" | "proportions">) {
  const solid = useMemo(
    () => findSolid(StoneBodySchema.parse({ cut, proportions }), "").solid,
    [cut, proportions],
  );
  return (
    <span className={classes.thumb} aria-hidden="true">
      {solid !== null && <ViewFigure solid={solid} view="crown" />}
    </span>
  );
}

function ReferenceState({ referenceVersion, referenceMarks, isBlind }: StoneRow) {
  if (isBlind) return <StatusBadge tone="idle">You read it blind</StatusBadge>;
  if (referenceVersion === 0) return <StatusBadge tone="bad">No reference yet</StatusBadge>;
  const marks = referenceMarks === 1 ? "1 mark" : `${referenceMarks} marks`;
  return (
    <StatusBadge tone="ready">
      Version {referenceVersion}, {marks}
    </StatusBadge>
  );
}

/** Mean points as a number and a bar of that length. */
function MeanTotal({ meanTotal, handIns }: StoneRow) {
  if (meanTotal === null) return <span className="muted">–</span>;
  return (
    <>
      <span className={classes.mean}>
        <span className={classes.track} aria-hidden="true">
          <span className={classes.bar} style={{ inlineSize: `${meanTotal}%` }} />
        </span>
        {meanTotal.toFixed(1)}
      </span>
      <span className={classes.onLaptop}>{handIns === 1 ? "1 hand-in" : `${handIns} hand-ins`}</span>
    </>
  );
}

interface Choice {
  readonly chosen: ReadonlySet<string>;
  readonly onToggle: (stoneId: string) => void;
}

/** What the columns say that a narrow page leaves out. */
function NarrowFacts({ stone }: { stone: StoneRow }) {
  const { cut, weightCt, clarity, referenceVersion, isBlind, meanTotal } = stone;
  const body = [CUT_LABELS[cut], ...(weightCt === null ? [] : [`${weightCt.toFixed(2)} ct`])].join(", ");
  const reference = isBlind
    ? "you read it blind"
    : referenceVersion === 0
      ? "no reference yet"
      : `${clarity ?? "no clarity"}, version ${referenceVersion}`;
  const mean = meanTotal === null ? "" : `, mean ${meanTotal.toFixed(1)}`;
  return (
    <>
      <span className={classes.onLaptop}>{body}</span>
      <span className={classes.onPhone}>
        {reference}
        {mean}
      </span>
    </>
  );
}

function buildColumns(trayId: string, { chosen, onToggle }: Choice): readonly DataColumn<StoneRow>[] {
  return [
    {
      key: "chosen",
      header: "Choose",
      value: ({ stoneId }) => (chosen.has(stoneId) ? "chosen" : ""),
      cell: ({ stoneId, label }) => (
        <Checkbox
          aria-label={`Choose ${label}`}
          checked={chosen.has(stoneId)}
          onChange={() => onToggle(stoneId)}
        />
      ),
    },
    {
      key: "position",
      header: "Place",
      value: ({ position }) => position,
      align: "end",
      hideBelow: "tablet",
    },
    {
      key: "label",
      header: "Stone",
      value: ({ label }) => label,
      cell: (stone) => (
        <span className={classes.stone}>
          <StoneThumb cut={stone.cut} proportions={stone.proportions} />
          <span className={classes.words}>
            <Link href={`/trays/${trayId}/stones/${stone.stoneId}`}>{stone.label}</Link>
            <NarrowFacts stone={stone} />
          </span>
        </span>
      ),
      isRowHeader: true,
    },
    {
      key: "where",
      header: "Where",
      value: ({ out }) => toWhereWords(out),
      cell: ({ out, mismatches }) => (
        <span className={classes.where}>
          <WhereBadge out={out} />
          {mismatches > 0 && (
            <Link href={`/trays/${trayId}/check#checks`}>
              <StatusBadge tone="bad">Label doubted</StatusBadge>
            </Link>
          )}
        </span>
      ),
    },
    {
      key: "cut",
      header: "Cut",
      value: ({ cut }) => CUT_LABELS[cut],
      cell: ({ cut }) => <span className={cells.line}>{CUT_LABELS[cut]}</span>,
      hideBelow: "laptop",
    },
    {
      key: "weight",
      header: "Weight, ct",
      value: ({ weightCt }) => weightCt,
      cell: ({ weightCt }) => (weightCt === null ? <span className="muted">–</span> : weightCt.toFixed(2)),
      align: "end",
      hideBelow: "laptop",
    },
    {
      key: "clarity",
      header: "Clarity",
      value: ({ clarity }) => clarity,
      cell: ({ clarity }) =>
        clarity === null ? <span className="muted">–</span> : <span className={cells.line}>{clarity}</span>,
      hideBelow: "tablet",
    },
    {
      key: "reference",
      header: "Reference",
      value: ({ referenceVersion }) => referenceVersion,
      cell: (row) => <ReferenceState {...row} />,
      hideBelow: "tablet",
    },
    {
      key: "handIns",
      header: "Hand-ins",
      value: ({ handIns }) => handIns,
      align: "end",
      hideBelow: "laptop",
    },
    {
      key: "mean",
      header: "Mean points",
      value: ({ meanTotal }) => meanTotal,
      cell: (row) => <MeanTotal {...row} />,
      align: "end",
      hideBelow: "tablet",
    },
  ];
}

export interface TrayStonesTableProps {
  trayId: string;
  trayName: string;
  stones: readonly StoneRow[];
  /** Which are ticked. */
  chosen: ReadonlySet<string>;
  onToggle: (stoneId: string) => void;
}

/** The stones of a tray: what each is, where it is, whether it has a reference, and how it has been doing. */
export function TrayStonesTable({ trayId, trayName, stones, chosen, onToggle }: TrayStonesTableProps) {
  const columns = useMemo(() => buildColumns(trayId, { chosen, onToggle }), [trayId, chosen, onToggle]);
  return (
    <DataTable
      caption="Stones"
      rows={stones}
      columns={columns}
      rowKey={({ stoneId }) => stoneId}
      csvName={`stones of ${trayName}`}
      initialSort={{ key: "position", down: false }}
    />
  );
}
