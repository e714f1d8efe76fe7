import type { Resource } from "@/lib/access/can";
import { findPresence } from "@/lib/data/store/bench-presence";
import { parseColumn } from "@/lib/data/store/parse-column";
import { toSentNote } from "@/lib/data/store/to-sent-note";
import { type ExerciseRules, ExerciseRulesSchema } from "@/lib/plot/exercise-rules";
import { findBurstUnderWay } from "@/lib/plot/find-dotting";
import type { PlottedMark } from "@/lib/plot/mark";
import { PREPARATION_STEPS } from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { type WatchRow, WatchRowSchema } from "@/lib/plot/watch-view";
import type { Prisma } from "@/prisma/generated/client";

/** What a row of the watch is made of. */
export const WATCH_PARTS = {
  student: { select: { id: true, name: true } },
  exerciseStone: {
    select: {
      stone: { select: { label: true } },
      exercise: {
        select: {
          id: true,
          title: true,
          rules: true,
          opensAt: true,
          dueAt: true,
          closesAt: true,
          allowances: { select: { studentId: true, dueAt: true, closesAt: true } },
          section: { select: { id: true, name: true, instructors: { select: { instructorId: true } } } },
        },
      },
    },
  },
  handIn: { select: { handedInAt: true } },
  notes: { orderBy: { sentAt: "desc" }, take: 1, include: { author: { select: { name: true } } } },
} as const satisfies Prisma.SittingInclude;

type WatchedSitting = Prisma.SittingGetPayload<{ include: typeof WATCH_PARTS }>;

/** A row with what its access hangs on. */
export interface WatchedRow extends Resource {
  readonly row: WatchRow;
}

/** The burst under way, with its last dot's time by the server's clock: never later than its step came in. */
function toDotting(
  sitting: WatchedSitting,
  marks: readonly PlottedMark[],
  rules: ExerciseRules,
): WatchRow["dotting"] {
  const burst = findBurstUnderWay(marks, rules.dotting);
  if (burst === null) return null;
  const latestMs = sitting.lastEventAt?.getTime() ?? Date.now();
  const lastDotMs = Math.min(sitting.openedAt.getTime() + burst.toMs, latestMs);
  return { dots: burst.dots.length, lastDotAt: new Date(lastDotMs).toISOString() };
}

/** The row of a sitting, as the database and the benches' presence have it now. */
export function toWatchRow(sitting: WatchedSitting): WatchedRow {
  const { stone, exercise } = sitting.exerciseStone;
  const rules = parseColumn(ExerciseRulesSchema, exercise.rules, "Exercise.rules");
  const { prepared, plot } = parseColumn(SittingStateSchema, sitting.state, "Sitting.state");
  const note = sitting.notes[0];
  const heard = findPresence(sitting.id);
  const row = WatchRowSchema.parse({
    sittingId: sitting.id,
    studentId: sitting.student.id,
    studentName: sitting.student.name,
    sectionId: exercise.section.id,
    sectionName: exercise.section.name,
    exerciseId: exercise.id,
    exerciseTitle: exercise.title,
    stoneLabel: stone.label,
    openedAt: sitting.openedAt.toISOString(),
    handedInAt: sitting.handIn?.handedInAt.toISOString() ?? null,
    endsAt: sitting.endsAt?.toISOString() ?? null,
    lastEventAt: sitting.lastEventAt?.toISOString() ?? null,
    lastSeq: sitting.lastSeq,
    markCount: sitting.markCount,
    preparation: rules.preparation,
    prepared: PREPARATION_STEPS.filter((step) => prepared[step] !== undefined),
    dotting: toDotting(sitting, plot.marks, rules),
    presence: heard?.presence ?? "unheard",
    presenceSince: heard === null ? null : new Date(heard.sinceMs).toISOString(),
    lastNote: note === undefined ? null : toSentNote(note),
  });
  return { row, instructorIds: exercise.section.instructors.map(({ instructorId }) => instructorId) };
}
