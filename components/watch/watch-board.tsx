"use client";

import { Button, Modal, Select } from "@mantine/core";
import { useDisclosure } from "@mantine/hooks";
import { useMemo, useState } from "react";
import { EmptyState } from "@/components/ui/empty-state";
import { PageHeader, type PageHeaderProps } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { FeedNote } from "@/components/watch/feed-note";
import {
  countFlags,
  isShown,
  type JudgedRow,
  judgeRow,
  sortRows,
  WATCH_ORDERS,
  type WatchFlag,
  type WatchOrder,
  type WatchWho,
} from "@/components/watch/judge-row";
import { NoteForm, type SendNotes } from "@/components/watch/note-form";
import { useServerNow } from "@/components/watch/use-server-now";
import { useWatchFeed } from "@/components/watch/use-watch-feed";
import classes from "@/components/watch/watch-board.module.css";
import { WatchCountsBar } from "@/components/watch/watch-counts";
import { WatchPlot } from "@/components/watch/watch-plot";
import { WatchTable } from "@/components/watch/watch-table";
import type { ExerciseRow } from "@/lib/plot/staff-view";
import type { Watch } from "@/lib/plot/watch-view";

const ORDER_LABELS: Readonly<Record<WatchOrder, string>> = {
  look: "Who needs a look first",
  name: "Name",
  time: "Longest on the stone",
  marks: "Fewest marks",
};

type WatchedExercise = Pick<ExerciseRow, "exerciseId" | "title" | "sectionName">;

export interface WatchBoardProps {
  first: Watch;
  /** The exercise that the page was opened for. */
  exercise: WatchedExercise | null;
  trail?: PageHeaderProps["trail"];
  send: SendNotes;
}

/** The exercises that somebody is on, and the one that was asked for, by title and section. */
function listExercises(rows: readonly JudgedRow[], asked: WatchedExercise | null) {
  const byId = new Map(
    rows.map(({ row }) => [row.exerciseId, `${row.exerciseTitle} · ${row.sectionName}`] as const),
  );
  if (asked !== null) byId.set(asked.exerciseId, `${asked.title} · ${asked.sectionName}`);
  return [...byId]
    .map(([value, label]) => ({ value, label }))
    .sort((a, b) => a.label.localeCompare(b.label, "en"));
}

function NoteToDotting({ dotting, send }: { dotting: readonly JudgedRow[]; send: SendNotes }) {
  const [isOpen, dialog] = useDisclosure(false);
  // Fixed when the dialog opens: whoever was meant stays meant while the words are written.
  const [sittingIds, setSittingIds] = useState<readonly string[]>([]);
  const count = (number: number) => (number === 1 ? "1 bench" : `${number} benches`);
  return (
    <>
      <Button
        variant="outline"
        disabled={dotting.length === 0}
        onClick={() => {
          setSittingIds(dotting.map(({ row }) => row.sittingId));
          dialog.open();
        }}
      >
        Note to all who are dotting
      </Button>
      <Modal
        opened={isOpen}
        onClose={dialog.close}
        size="34rem"
        title={`To ${count(sittingIds.length)} with a burst of dots`}
        closeButtonProps={{ "aria-label": "Close" }}
      >
        <NoteForm sittingIds={sittingIds} to={count(sittingIds.length)} send={send} onSent={dialog.close} />
      </Modal>
    </>
  );
}

function NoRows({ flag, hasRows }: { flag: WatchFlag | null; hasRows: boolean }) {
  if (flag !== null) return <p className={classes.none}>Nobody now. This fills by itself.</p>;
  if (hasRows) {
    return (
      <p className={classes.none}>
        Nobody is at the bench now. Choose “Every open stone” to see stones that were left open today.
      </p>
    );
  }
  return (
    <EmptyState title="Nobody is at the bench">
      As soon as a student opens a stone of an exercise that is open now, they appear here by themselves.
    </EmptyState>
  );
}

/** The class now, as it happens. */
export function WatchBoard({ first, exercise, trail, send }: WatchBoardProps) {
  const { rows, mode, aheadMs } = useWatchFeed(first);
  const nowMs = useServerNow(aheadMs, Date.parse(first.readAt));
  const [who, setWho] = useState<WatchWho>("here");
  const [exerciseId, setExerciseId] = useState(exercise?.exerciseId ?? null);
  const [flag, setFlag] = useState<WatchFlag | null>(null);
  const [order, setOrder] = useState<WatchOrder>("look");
  const [openId, setOpenId] = useState<string | null>(null);
  const judged = useMemo(() => [...rows.values()].map((row) => judgeRow(row, nowMs)), [rows, nowMs]);
  const inExercise = judged.filter(({ row }) => exerciseId === null || row.exerciseId === exerciseId);
  const shown = sortRows(
    inExercise.filter((one) => isShown(one, { who, exerciseId, flag })),
    order,
  );
  const open = judged.find(({ row }) => row.sittingId === openId);
  const dotting = inExercise.filter(({ flags }) => flags.includes("dotting"));

  return (
    <div className="page-wide">
      <PageHeader
        title="Watch"
        trail={trail ?? []}
        lead={<FeedNote mode={mode} />}
        actions={<NoteToDotting dotting={dotting} send={send} />}
      />
      <div className="stack">
        <WatchCountsBar counts={countFlags(inExercise)} flag={flag} onFlag={setFlag} />
        <p className="visually-hidden" role="status">
          {dotting.length === 0 ? "" : `Dotting: ${dotting.map(({ row }) => row.studentName).join(", ")}`}
        </p>
        {open !== undefined && (
          <WatchPlot
            key={open.row.sittingId}
            judged={open}
            nowMs={nowMs}
            send={send}
            onClose={() => setOpenId(null)}
          />
        )}
        <div className={classes.tools}>
          <Select
            aria-label="Exercise"
            placeholder="Every exercise"
            data={listExercises(judged, exercise)}
            value={exerciseId}
            clearable
            onChange={setExerciseId}
          />
          <Select
            aria-label="Who is shown"
            data={[
              { value: "here", label: "At the bench" },
              { value: "all", label: "Every open stone" },
            ]}
            value={who}
            allowDeselect={false}
            onChange={(value) => setWho(value === "all" ? "all" : "here")}
          />
          <Select
            aria-label="Order"
            data={WATCH_ORDERS.map((value) => ({ value, label: ORDER_LABELS[value] }))}
            value={order}
            allowDeselect={false}
            onChange={(value) => setOrder(WATCH_ORDERS.find((one) => one === value) ?? "look")}
          />
        </div>
        {shown.length === 0 ? (
          <NoRows flag={flag} hasRows={inExercise.length > 0} />
        ) : (
          <WatchTable rows={shown} nowMs={nowMs} openId={openId} onOpen={setOpenId} />
        )}
        <PracticeNote />
      </div>
    </div>
  );
}
