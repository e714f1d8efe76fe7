"use client";

import { FlagSign } from "@/components/watch/flag-sign";
import type { JudgedRow } from "@/components/watch/judge-row";
import { PreparedPips } from "@/components/watch/prepared-pips";
import classes from "@/components/watch/watch-board.module.css";
import { FLAG_WORDS, toOnStoneWords, toPresenceWords, toSpanWords } from "@/components/watch/watch-words";

export interface WatchTableProps {
  rows: readonly JudgedRow[];
  nowMs: number;
  openId: string | null;
  onOpen: (sittingId: string) => void;
}

function Flags({ judged }: { judged: JudgedRow }) {
  const { row, flags } = judged;
  if (row.handedInAt !== null) return <span className={classes.calm}>Handed in</span>;
  if (flags.length === 0) return <span className={classes.calm}>{judged.isHere ? "Plotting" : "–"}</span>;
  return (
    <ul className={classes.flags}>
      {flags.map((flag) => (
        <li key={flag} className={classes.flag} data-flag={flag}>
          <FlagSign flag={flag} />
          {flag === "dotting" ? `dotting, ${row.dotting?.dots} dots` : FLAG_WORDS[flag].one}
        </li>
      ))}
    </ul>
  );
}

function LastNote({ row }: Pick<JudgedRow, "row">) {
  if (row.lastNote === null) return null;
  return (
    <span className={classes.lastNote} title={row.lastNote.text}>
      Note {row.lastNote.seenAt === null ? "sent, not seen yet" : "seen"}
    </span>
  );
}

function Row({
  judged,
  nowMs,
  isOpen,
  onOpen,
}: Omit<WatchTableProps, "rows" | "openId"> & {
  judged: JudgedRow;
  isOpen: boolean;
}) {
  const { row } = judged;
  return (
    <tr data-open={isOpen} data-here={judged.isHere} data-dotting={judged.flags.includes("dotting")}>
      <th scope="row">
        <button
          type="button"
          className={classes.open}
          aria-pressed={isOpen}
          onClick={() => onOpen(row.sittingId)}
        >
          <span className={classes.name}>{row.studentName}</span>
          <span className={classes.small}>{row.sectionName}</span>
        </button>
      </th>
      <td>
        <span className={classes.stone}>{row.stoneLabel}</span>
        <span className={classes.small}>{row.exerciseTitle}</span>
      </td>
      <td className={classes.number}>{row.markCount}</td>
      <td>
        <Flags judged={judged} />
        <LastNote row={row} />
      </td>
      <td className={classes.wide}>
        <PreparedPips row={row} />
      </td>
      <td className={classes.time}>{toOnStoneWords(judged)}</td>
      <td className={classes.wide}>
        <span className={classes.time}>
          {row.lastEventAt === null ? "nothing yet" : toSpanWords(judged.quietMs)}
        </span>
      </td>
      <td className={classes.wide}>
        <span className={classes.presence} data-presence={row.handedInAt === null ? row.presence : "gone"}>
          {toPresenceWords(judged, nowMs)}
        </span>
      </td>
    </tr>
  );
}

/** Who is on which stone, one row each; pressing a name opens the plot. */
export function WatchTable({ rows, nowMs, openId, onOpen }: WatchTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table must scroll from the keyboard
    <section className={classes.scroll} tabIndex={0} aria-label="Benches, scrolls sideways">
      <table className={classes.table}>
        <caption className="visually-hidden">Benches: who is on which stone, and how it goes</caption>
        <thead>
          <tr>
            <th scope="col">Student</th>
            <th scope="col">Stone</th>
            <th scope="col" className={classes.number}>
              Marks
            </th>
            <th scope="col">Now</th>
            <th scope="col" className={classes.wide}>
              Preparation
            </th>
            <th scope="col">On the stone</th>
            <th scope="col" className={classes.wide}>
              Last step
            </th>
            <th scope="col" className={classes.wide}>
              Bench
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((judged) => (
            <Row
              key={judged.row.sittingId}
              judged={judged}
              nowMs={nowMs}
              isOpen={openId === judged.row.sittingId}
              onOpen={onOpen}
            />
          ))}
        </tbody>
      </table>
    </section>
  );
}
