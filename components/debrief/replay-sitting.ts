/** The log of a sitting as something to play back: the plot after each event, and each event in words. Pure. */
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { getMiddle } from "@/lib/editor/measure-shape";
import type { Solid } from "@/lib/gem/build-solid";
import { locatePoint } from "@/lib/gem/locate-point";
import type { DebriefNote } from "@/lib/plot/bench-note";
import { toCharacteristicLabel } from "@/lib/plot/characteristic";
import type { PlottedMark } from "@/lib/plot/mark";
import {
  applySittingEvent,
  EMPTY_SITTING,
  type PREPARATION_STEPS,
  type SittingEvent,
  type SittingState,
} from "@/lib/plot/sitting-event";

/** How an event is marked on the timeline: each has a sign of its own. */
export const FRAME_SIGNS = ["placed", "changed", "proved", "removed", "prepared", "graded", "noted"] as const;
export type FrameSign = (typeof FRAME_SIGNS)[number];

export interface ReplayFrame {
  readonly seq: number;
  readonly atMs: number;
  readonly sign: FrameSign;
  readonly words: string;
  /** The plot once this is done. */
  readonly marks: readonly PlottedMark[];
}

const STEP_DONE: Readonly<Record<(typeof PREPARATION_STEPS)[number], string>> = {
  cleaned: "stone clean and wiped",
  held: "held the right way round",
  tilted: "rock and tilt",
  regripped: "second grip",
};

const toProofs = (mark: PlottedMark) => (mark.proofs ?? []).join(", ");

/** Whether nothing of a mark changed but its proofs. */
const isProving = (before: PlottedMark | undefined, after: PlottedMark) =>
  before !== undefined &&
  toProofs(before) !== toProofs(after) &&
  before.characteristic === after.characteristic &&
  before.confidence === after.confidence;

/** What of a mark became what: the characteristic, the confidence, the proofs, else its shape or place. */
function describeChange(before: PlottedMark, after: PlottedMark): string {
  const name = toCharacteristicLabel(before.characteristic);
  if (before.characteristic !== after.characteristic) {
    return `${name} is now ${toCharacteristicLabel(after.characteristic)}`;
  }
  if (before.confidence !== after.confidence) {
    return `${name}: confidence ${after.confidence ?? "not given"}`;
  }
  if (toProofs(before) !== toProofs(after)) return `${name}: ${toProofs(after) || "no proof"}`;
  return `${name} moved or reshaped`;
}

function describeMarks(
  before: SittingState,
  { put, removed }: Extract<SittingEvent, { kind: "marks" }>,
  solid: Solid,
): Pick<ReplayFrame, "sign" | "words"> {
  const known = new Map(before.plot.marks.map((mark) => [mark.id, mark]));
  const words = put.map((mark) => {
    const was = known.get(mark.id);
    if (was !== undefined) return describeChange(was, mark);
    const { words: place } = locatePoint(solid, mark.view, getMiddle(mark.shape));
    return `${toCharacteristicLabel(mark.characteristic)} placed, ${mark.view}, ${place}`;
  });
  const gone = removed.map(
    (id) => `${toCharacteristicLabel(known.get(id)?.characteristic ?? "mark")} removed`,
  );
  const sign = ((): FrameSign => {
    if (put.some(({ id }) => !known.has(id))) return "placed";
    if (put.length === 0) return "removed";
    return put.every((mark) => isProving(known.get(mark.id), mark)) ? "proved" : "changed";
  })();
  return { sign, words: [...words, ...gone].join("; ") };
}

function describeEvent(
  before: SittingState,
  event: SittingEvent,
  solid: Solid,
): Pick<ReplayFrame, "sign" | "words"> {
  if (event.kind === "marks") return describeMarks(before, event, solid);
  if (event.kind === "grade") {
    return { sign: "graded", words: `${PROPERTY_LABELS[event.property]}: ${event.grade ?? "not given"}` };
  }
  const words = `Preparation: ${STEP_DONE[event.step]}${event.done ? "" : ", taken back"}`;
  return { sign: "prepared", words };
}

/**
 * One frame for each event, in order of the log. An empty log gives none. Where the clock of a sitting was set back, a
 * frame is shown at the moment of the one before: the log's order is the truth.
 */
export function listReplayFrames(events: readonly SittingEvent[], solid: Solid): ReplayFrame[] {
  let state = EMPTY_SITTING;
  let atMs = 0;
  return [...events]
    .sort((a, b) => a.seq - b.seq)
    .map((event) => {
      const said = describeEvent(state, event, solid);
      state = applySittingEvent(state, event);
      atMs = Math.max(atMs, event.atMs);
      return { seq: event.seq, atMs, ...said, marks: state.plot.marks };
    });
}

/** A note as a moment of the sitting: the plot stays as it was. `index` keeps its `seq` apart from the log's own. */
function toNoteFrame(note: DebriefNote, openedMs: number, index: number): ReplayFrame {
  const seen =
    note.seenAt === null ? "not seen" : `seen at ${toClockWords(Date.parse(note.seenAt) - openedMs)}`;
  return {
    seq: -1 - index,
    atMs: Math.max(0, Date.parse(note.sentAt) - openedMs),
    sign: "noted",
    words: `Note from the instructor: “${note.text}” (${seen})`,
    marks: [],
  };
}

/** The frames with the notes that staff sent among them, each before what was done after it. */
export function insertNotes(
  frames: readonly ReplayFrame[],
  notes: readonly DebriefNote[],
  openedAt: string,
): ReplayFrame[] {
  const openedMs = Date.parse(openedAt);
  const all = [...frames];
  notes.forEach((note, index) => {
    const frame = toNoteFrame(note, openedMs, index);
    const next = all.findIndex(({ atMs }) => atMs > frame.atMs);
    const place = next < 0 ? all.length : next;
    all.splice(place, 0, { ...frame, marks: all[place - 1]?.marks ?? [] });
  });
  return all;
}

/** How many frames are done at a time of the sitting. */
export function countFramesUntil(frames: readonly ReplayFrame[], tMs: number): number {
  const next = frames.findIndex(({ atMs }) => atMs > tMs);
  return next < 0 ? frames.length : next;
}

/** Minutes and seconds, with hours where there are any: "4:07", "1:02:30". */
export function toClockWords(ms: number): string {
  const seconds = Math.floor(ms / 1000);
  const [hours, minutes, rest] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const two = (value: number) => String(value).padStart(2, "0");
  return hours > 0 ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`;
}
