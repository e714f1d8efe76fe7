/** What the watch says, in words. Pure. */
import type { JudgedRow, WatchFlag } from "@/components/watch/judge-row";
import { PREPARATION_STEPS } from "@/lib/plot/sitting-event";
import type { Presence, WatchRow } from "@/lib/plot/watch-view";

export const FLAG_WORDS: Readonly<Record<WatchFlag, { readonly one: string; readonly why: string }>> = {
  dotting: {
    one: "dotting now",
    why: "A burst of quick dots in the last minute: the stone may not be clean.",
  },
  unprepared: { one: "not prepared", why: "Not every step of the preparation card is confirmed." },
  stuck: {
    one: "stuck",
    why: "Ten minutes or more on the stone, and no mark yet or nothing done for six minutes.",
  },
  idle: { one: "idle", why: "Nothing done at the bench for three minutes." },
};

const PRESENCE_WORDS: Readonly<Record<Presence, string>> = {
  here: "at the bench",
  away: "another page in front",
  gone: "bench closed",
  unheard: "bench not open",
};

/** A span of time as it is read across a room: "under 1 min", "12 min", "1 h 05 min", "3 days". */
export function toSpanWords(ms: number): string {
  const minutes = Math.floor(ms / 60_000);
  if (minutes < 1) return "under 1 min";
  if (minutes < 60) return `${minutes} min`;
  const hours = Math.floor(minutes / 60);
  if (hours < 48) return `${hours} h ${String(minutes % 60).padStart(2, "0")} min`;
  return `${Math.floor(hours / 24)} days`;
}

/** "4 min", and of a timed stone "4 min, 11 min left" or "15 min, time is up". */
export function toOnStoneWords({ onStoneMs, leftMs }: Pick<JudgedRow, "onStoneMs" | "leftMs">): string {
  const spent = toSpanWords(onStoneMs);
  if (leftMs === null) return spent;
  return leftMs === 0 ? `${spent}, time is up` : `${spent}, ${toSpanWords(leftMs)} left`;
}

/** "3 of 4", "all", "none", "not asked for". */
export function toPreparedWords({ preparation, prepared }: WatchRow): string {
  if (preparation === "off") return "not asked for";
  if (prepared.length === 0) return "none";
  return prepared.length === PREPARATION_STEPS.length
    ? "all"
    : `${prepared.length} of ${PREPARATION_STEPS.length}`;
}

/** Whether the bench is open and since when: "at the bench, 12 min", "bench closed, 3 min". */
export function toPresenceWords({ row }: JudgedRow, nowMs: number): string {
  if (row.handedInAt !== null) return "handed in";
  const words = PRESENCE_WORDS[row.presence];
  if (row.presenceSince === null) return words;
  return `${words}, ${toSpanWords(Math.max(0, nowMs - Date.parse(row.presenceSince)))}`;
}

/** Short things to say to a bench, in our own words. */
export const NOTE_SUGGESTIONS: readonly string[] = [
  "Clean it and look again.",
  "Tilt it: does the mark move with the stone, or does it jump?",
  "Grip it table to culet and look a second time.",
  "Is it the right way round? Check the landmark.",
  "Lay the loupe down for a minute. I am coming over.",
];
