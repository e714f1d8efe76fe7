import type { WatchRow } from "@/lib/plot/watch-view";

/** A row of the watch: a bench that is open, prepared and busy, opened five minutes before `2026-11-25T10:05Z`. */
export function makeWatchRow(part: Partial<WatchRow> = {}): WatchRow {
  return {
    sittingId: "s1",
    studentId: "u1",
    studentName: "Ada Student",
    sectionId: "c1",
    sectionName: "Morning",
    exerciseId: "e1",
    exerciseTitle: "First look",
    stoneLabel: "T-1",
    openedAt: "2026-11-25T10:00:00.000Z",
    handedInAt: null,
    endsAt: null,
    lastEventAt: "2026-11-25T10:04:50.000Z",
    lastSeq: 7,
    markCount: 4,
    preparation: "required",
    prepared: ["cleaned", "held", "tilted", "regripped"],
    dotting: null,
    presence: "here",
    presenceSince: "2026-11-25T10:00:00.000Z",
    lastNote: null,
    ...part,
  };
}
