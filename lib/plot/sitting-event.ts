/** The append-only log of a sitting: what was done on the bench and when. The plot is what the log adds up to. */
import { z } from "zod";
import { GRADED_PROPERTIES, type PlotGrades } from "@/lib/plot/grades";
import { IdSchema, MAX_MARKS, type PlottedMark, PlottedMarkSchema } from "@/lib/plot/mark";
import type { Plot } from "@/lib/plot/plots-file";

/** The steps of the preparation card, in order (screens.md, Bench). */
export const PREPARATION_STEPS = ["cleaned", "held", "tilted", "regripped"] as const;

const stamp = {
  /** Place in the sitting's log: 1, 2, 3 … without gaps. */
  seq: z.int().min(1).max(1_000_000),
  /** Milliseconds since the sitting opened, by the writer's clock. */
  atMs: z.number().min(0).max(1e12),
};

/** Marks put (added or replaced whole, by id) and removed, as one step of undo. */
export const MarksEventSchema = z.strictObject({
  ...stamp,
  kind: z.literal("marks"),
  put: z.array(PlottedMarkSchema).max(MAX_MARKS),
  removed: z.array(IdSchema).max(MAX_MARKS),
});

export const GradeEventSchema = z.strictObject({
  ...stamp,
  kind: z.literal("grade"),
  property: z.enum(GRADED_PROPERTIES),
  grade: z.string().min(1).max(40).nullable(),
});

export const PreparedEventSchema = z.strictObject({
  ...stamp,
  kind: z.literal("prepared"),
  step: z.enum(PREPARATION_STEPS),
  done: z.boolean(),
});

export const SittingEventSchema = z.discriminatedUnion("kind", [
  MarksEventSchema,
  GradeEventSchema,
  PreparedEventSchema,
]);
export type SittingEvent = z.infer<typeof SittingEventSchema>;

/** What a sitting's log adds up to. */
export interface SittingState {
  readonly plot: Plot;
  /** When each step of the preparation was confirmed, ms since the sitting opened. */
  readonly prepared: Readonly<Partial<Record<(typeof PREPARATION_STEPS)[number], number>>>;
  /** The `seq` of the last event, 0 for an empty log. */
  readonly lastSeq: number;
}

export const EMPTY_SITTING: SittingState = { plot: { grades: {}, marks: [] }, prepared: {}, lastSeq: 0 };

/** Marks after an event: replaced in place, new ones at the end, in the order of the event. */
function applyMarks(marks: readonly PlottedMark[], put: readonly PlottedMark[], removed: readonly string[]) {
  const byId = new Map(marks.map((mark) => [mark.id, mark]));
  for (const id of removed) byId.delete(id);
  for (const mark of put) byId.set(mark.id, mark);
  return [...byId.values()];
}

function applyGrade(grades: PlotGrades, property: keyof PlotGrades, grade: string | null): PlotGrades {
  const { [property]: _before, ...rest } = grades;
  return grade === null ? rest : { ...rest, [property]: grade };
}

/** The state after one more event. Pure; the event's place in the log is the caller's to check. */
export function applySittingEvent(state: SittingState, event: SittingEvent): SittingState {
  switch (event.kind) {
    case "marks":
      return {
        ...state,
        plot: { ...state.plot, marks: applyMarks(state.plot.marks, event.put, event.removed) },
        lastSeq: event.seq,
      };
    case "grade":
      return {
        ...state,
        plot: { ...state.plot, grades: applyGrade(state.plot.grades, event.property, event.grade) },
        lastSeq: event.seq,
      };
    case "prepared": {
      const { [event.step]: _before, ...rest } = state.prepared;
      const prepared = event.done ? { ...rest, [event.step]: event.atMs } : rest;
      return { ...state, prepared, lastSeq: event.seq };
    }
  }
}

/** Rebuilds a sitting from its log, in order of `seq`. An empty log gives the empty sitting. */
export function rebuildSitting(events: readonly SittingEvent[]): SittingState {
  return [...events].sort((a, b) => a.seq - b.seq).reduce(applySittingEvent, EMPTY_SITTING);
}
