"use client";

import { CloseButton, SegmentedControl } from "@mantine/core";
import { useEffect, useMemo, useRef, useState } from "react";
import { toClockWords } from "@/components/debrief/replay-sitting";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import { LinkButton } from "@/components/ui/link-button";
import { buildPlotLayer, buildReferenceLayer } from "@/components/watch/build-watch-layers";
import type { JudgedRow } from "@/components/watch/judge-row";
import { NoteForm, type SendNotes } from "@/components/watch/note-form";
import { PreparedPips } from "@/components/watch/prepared-pips";
import { useBenchWatch } from "@/components/watch/use-bench-watch";
import classes from "@/components/watch/watch-plot.module.css";
import { toOnStoneWords, toPresenceWords } from "@/components/watch/watch-words";
import { getSolid } from "@/lib/gem/build-solid";
import type { SentNote } from "@/lib/plot/bench-note";
import type { BenchWatchView } from "@/lib/plot/staff-view";

type Laying = "beside" | "over";

function Diagrams({ watch, laying }: { watch: BenchWatchView; laying: Laying }) {
  const { cut, proportions } = watch.stone;
  const solid = useMemo(() => getSolid(cut, proportions), [cut, proportions]);
  const plot = useMemo(() => buildPlotLayer(watch, solid), [watch, solid]);
  const reference = useMemo(() => buildReferenceLayer(watch, solid), [watch, solid]);
  const both = useMemo(() => [reference, plot], [reference, plot]);
  const alone = useMemo(() => ({ plot: [plot], reference: [reference] }), [plot, reference]);
  const shared = {
    mode: "debrief",
    cut,
    proportions,
    characteristics: watch.characteristics,
    hasOwnList: true,
  } as const;
  if (laying === "over") return <PlotEditor key="over" {...shared} layers={both} />;
  return (
    <div className={classes.pair}>
      <section aria-labelledby="watch-plot-so-far">
        <h3 id="watch-plot-so-far">Plot so far</h3>
        <PlotEditor key="plot" name="Plot" isPlain {...shared} layers={alone.plot} />
      </section>
      <section aria-labelledby="watch-plot-reference">
        <h3 id="watch-plot-reference">Reference</h3>
        {watch.isBlind ? (
          <p className="muted">
            You are reading this stone blind: hand the reading in, and it is shown here.
          </p>
        ) : watch.reference === null ? (
          <p className="muted">This stone has no reference yet.</p>
        ) : (
          <PlotEditor key="reference" name="Reference" isPlain {...shared} layers={alone.reference} />
        )}
      </section>
    </div>
  );
}

/** When a note was sent, on the clock of the sitting, and whether it was seen. */
function NotesSent({ notes, openedAt }: { notes: readonly SentNote[]; openedAt: string }) {
  if (notes.length === 0) return null;
  const since = (iso: string) => toClockWords(Math.max(0, Date.parse(iso) - Date.parse(openedAt)));
  return (
    <section aria-label="Notes sent">
      <h3>Notes sent</h3>
      <ol className={classes.notes} reversed>
        {[...notes].reverse().map(({ noteId, text, sentAt, seenAt, authorName }) => (
          <li key={noteId}>
            <p>{text}</p>
            <p className="muted">
              {authorName}, at {since(sentAt)} of the sitting ·{" "}
              {seenAt === null ? "not seen yet" : `seen at ${since(seenAt)}`}
            </p>
          </li>
        ))}
      </ol>
    </section>
  );
}

export interface WatchPlotProps {
  judged: JudgedRow;
  nowMs: number;
  send: SendNotes;
  onClose: () => void;
}

/** One student's plot as it grows, beside the reference. Looking on changes nothing for the student. */
export function WatchPlot({ judged, nowMs, send, onClose }: WatchPlotProps) {
  const { row } = judged;
  const [laying, setLaying] = useState<Laying>("beside");
  const version = `${row.lastSeq} ${row.lastNote?.noteId ?? ""} ${row.lastNote?.seenAt ?? ""}`;
  const { watch, isLost } = useBenchWatch(row.sittingId, version);
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  return (
    <section className={classes.root} aria-labelledby="watch-plot-title">
      <div className={classes.head}>
        <h2 id="watch-plot-title" ref={title} tabIndex={-1}>
          {row.studentName}, {row.stoneLabel}
        </h2>
        <p className={classes.facts}>
          <strong>{row.markCount === 1 ? "1 mark" : `${row.markCount} marks`}</strong>
          <span>{toOnStoneWords(judged)} on the stone</span>
          <span>{toPresenceWords(judged, nowMs)}</span>
          <span>
            Preparation: <PreparedPips row={row} />
          </span>
        </p>
        <SegmentedControl
          aria-label="How plot and reference are shown"
          size="xs"
          data={[
            { value: "beside", label: "Side by side" },
            { value: "over", label: "Laid over" },
          ]}
          value={laying}
          onChange={(value) => setLaying(value === "over" ? "over" : "beside")}
        />
        <LinkButton
          href={`/exercises/${row.exerciseId}/sittings/${row.sittingId}`}
          variant="subtle"
          size="compact-sm"
        >
          Open in review
        </LinkButton>
        <CloseButton aria-label="Close the plot" onClick={onClose} />
      </div>
      {isLost && (
        <p role="status" className={classes.lost}>
          The plot could not be read just now; it is read again with the next step.
        </p>
      )}
      <div className={classes.body}>
        {watch === null ? (
          <div className={classes.opening} aria-hidden="true" />
        ) : (
          <Diagrams watch={watch} laying={laying} />
        )}
        <div className={classes.side}>
          {row.handedInAt === null && (
            <NoteForm sittingIds={[row.sittingId]} to={row.studentName} send={send} />
          )}
          {watch !== null && <NotesSent notes={watch.notes} openedAt={row.openedAt} />}
        </div>
      </div>
    </section>
  );
}
