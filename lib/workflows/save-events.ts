import { isDeepStrictEqual } from "node:util";
import { z } from "zod";
import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { AppError, type Fault } from "@/lib/base/app-error";
import { noteWork } from "@/lib/data/store/bench-presence";
import type { Transaction } from "@/lib/data/store/database";
import { findSittingToSave, type SittingToSave } from "@/lib/data/store/find-sitting-to-save";
import { insertRows } from "@/lib/data/store/insert-rows";
import { parseColumn } from "@/lib/data/store/parse-column";
import { requireStillOpen, requireWriter } from "@/lib/data/store/require-own-sitting";
import { runTogether } from "@/lib/data/store/run-together";
import { toColumn } from "@/lib/data/store/to-column";
import { updateRow } from "@/lib/data/store/update-row";
import { announceSittings } from "@/lib/data/store/watch-bus";
import { ExerciseTermsSchema, resolveTerms } from "@/lib/plot/exercise-terms";
import { findPlotFaults, findSolid } from "@/lib/plot/find-plot-faults";
import { MAX_MARKS } from "@/lib/plot/mark";
import { parseInput } from "@/lib/plot/parse-input";
import {
  applySittingEvent,
  type SittingEvent,
  SittingEventSchema,
  type SittingState,
} from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { StoneBodySchema } from "@/lib/plot/stone";
import { WriterIdSchema } from "@/lib/plot/writer-id";
import { followClock } from "@/lib/workflows/timed/follow-clock";

/** Events of one batch; a bench that was long without a network sends several. */
export const MOST_EVENTS = 500;

const InputSchema = z.strictObject({
  sittingId: z.string(),
  writerId: WriterIdSchema,
  events: z.array(SittingEventSchema).min(1).max(MOST_EVENTS),
});

/** As the column will give it back: no -0, nothing undefined. */
const asStored = (event: SittingEvent): unknown => JSON.parse(JSON.stringify(event));

/** Refuses a sequence number that comes again with another body: two benches wrote the same place of the log. */
async function requireSameEvents(
  transaction: Transaction,
  sittingId: string,
  again: readonly SittingEvent[],
): Promise<void> {
  if (again.length === 0) return;
  const rows = await transaction.sittingEvent.findMany({
    where: { sittingId, seq: { in: again.map(({ seq }) => seq) } },
  });
  const bySeq = new Map(
    rows.map(({ seq, body }) => [seq, parseColumn(SittingEventSchema, body, "SittingEvent.body")]),
  );
  for (const event of again) {
    if (!isDeepStrictEqual(asStored(event), bySeq.get(event.seq))) {
      throw new AppError(
        "conflict",
        `Step ${event.seq} of this sitting is saved with other contents already.`,
      );
    }
  }
}

/** The events that are not saved yet, in order and without a gap after `lastSeq`. */
function requireUnbroken(events: readonly SittingEvent[], lastSeq: number): void {
  events.forEach((event, index) => {
    if (event.seq !== lastSeq + 1 + index) {
      throw new AppError(
        "conflict",
        `The steps do not follow on one another: ${lastSeq} is the last that is saved.`,
      );
    }
  });
}

/** Faults of what the events put, by the stone, its scales and its characteristics. */
function findEventFaults(events: readonly SittingEvent[], row: SittingToSave): Fault[] {
  const terms = resolveTerms(parseColumn(ExerciseTermsSchema, row.terms, "Exercise.terms"));
  const { solid } = findSolid(parseColumn(StoneBodySchema, row.body, "Stone.body"), "stone");
  return events.flatMap((event, index) => {
    const path = `events[${index}]`;
    if (event.kind === "marks") {
      return findPlotFaults({ grades: {}, marks: event.put }, solid, terms, path).map((fault) => ({
        ...fault,
        path: fault.path.replace(`${path}.marks`, `${path}.put`),
      }));
    }
    if (event.kind !== "grade" || event.grade === null) return [];
    const grades = { [event.property]: event.grade };
    return findPlotFaults({ grades, marks: [] }, solid, terms, path);
  });
}

async function appendEvents(
  transaction: Transaction,
  row: SittingToSave,
  writerId: string,
  events: readonly SittingEvent[],
): Promise<number> {
  const before = parseColumn(SittingStateSchema, row.state, "Sitting.state") as SittingState;
  const after = events.reduce(applySittingEvent, before);
  const faults = findEventFaults(events, row);
  if (after.plot.marks.length > MAX_MARKS) {
    faults.push({ path: "events", message: `a plot holds ${MAX_MARKS} marks at most` });
  }
  if (faults.length > 0) throw new AppError("bad-input", "These steps do not fit the stone.", faults);
  const now = new Date();
  await insertRows(
    transaction,
    "SittingEvent",
    events.map((event) => ({
      sittingId: row.id,
      seq: event.seq,
      kind: event.kind,
      atMs: event.atMs,
      body: JSON.stringify(toColumn(SittingEventSchema, event)),
      receivedAt: now,
    })),
  );
  await updateRow(transaction, "Sitting", row.id, {
    writerId,
    lastSeq: after.lastSeq,
    lastEventAt: now,
    markCount: after.plot.marks.length,
    // Parsed already, both what was there and what came: the schema is asked again whenever it is read.
    state: JSON.stringify(after),
  });
  return after.lastSeq;
}

/**
 * Appends to a sitting's log. When this resolves, what it acknowledges is on disk. Events that are saved already are
 * acknowledged again if they are the same, so that a batch whose answer was lost can be sent again. The log is its own
 * trail. Throws AppError `not-found`, `closed`, `taken-over` for another writer, `conflict` for a gap or another body,
 * `bad-input` for what does not fit the stone; nothing of the batch is then written.
 */
export async function saveEvents(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<{ lastSeq: number; endsAt: string | null }> {
  requireRole(viewer, "write-bench");
  const { sittingId, writerId, events } = parseInput(InputSchema, input);
  const ordered = [...events].sort((a, b) => a.seq - b.seq);
  await followClock();
  const saved = await runTogether(async (transaction) => {
    const { row } = requireAccess(viewer, "write-bench", await findSittingToSave(transaction, sittingId));
    const endsAt = row.endsAt?.toISOString() ?? null;
    const again = ordered.filter(({ seq }) => seq <= row.lastSeq);
    const fresh = ordered.filter(({ seq }) => seq > row.lastSeq);
    await requireSameEvents(transaction, sittingId, again);
    // What is saved is acknowledged even when nothing more is taken.
    if (fresh.length === 0) return { lastSeq: row.lastSeq, endsAt };
    requireStillOpen(row, Math.max(...fresh.map(({ atMs }) => atMs)));
    if (row.writerId !== null) requireWriter(row, writerId);
    requireUnbroken(fresh, row.lastSeq);
    return { lastSeq: await appendEvents(transaction, row, writerId, fresh), endsAt };
  });
  noteWork(sittingId);
  announceSittings(sittingId);
  return saved;
}
