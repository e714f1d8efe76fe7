import type { Transaction } from "@/lib/data/store/database";
import { toColumn } from "@/lib/data/store/to-column";
import type { PlannedSitting } from "@/lib/demo/plan-sittings";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import { PLOTS_FORMAT, PlotSchema } from "@/lib/plot/plots-file";
import { ScoreDetailSchema, type ScoredPlot, ScoreResultSchema } from "@/lib/plot/score-result";
import { SittingEventSchema } from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { PreparedSchema } from "@/lib/plot/student-view";
import { scorePlots } from "@/lib/scoring/score-plot";
import type { DemoActor, DemoTrail } from "@/lib/workflows/demo/demo-trail";
import type { WrittenExercise } from "@/lib/workflows/demo/write-demo-exercise";
import { type DemoPeople, getDemoActor } from "@/lib/workflows/demo/write-demo-people";

const SECOND_MS = 1000;
/** Scoring follows the hand-in at once; the debriefs are released a day after the due date. */
const SCORED_AFTER_MS = 2 * SECOND_MS;

/** A sitting with its result, null while it is on the bench. */
export interface ScoredSitting extends PlannedSitting {
  readonly scored: ScoredPlot | null;
}

/** Scores what was handed in by the engine itself, the exercise's stones being the tray. */
export function scoreSittings(resolved: ResolvedSet, sittings: readonly PlannedSitting[]): ScoredSitting[] {
  const handedIn = sittings.filter(({ handedInAt }) => handedInAt !== null);
  if (handedIn.length === 0) return sittings.map((sitting) => ({ ...sitting, scored: null }));
  const plots = handedIn.map(({ stone, login, state }) => ({ stone, by: login, ...state.plot }));
  const scored = scorePlots(resolved, { format: PLOTS_FORMAT, version: 1, plots });
  const bySitting = new Map(handedIn.map((sitting, index) => [sitting, scored[index] ?? null]));
  return sittings.map((sitting) => ({ ...sitting, scored: bySitting.get(sitting) ?? null }));
}

async function writeLog(transaction: Transaction, sitting: PlannedSitting, actor: DemoActor, place: string) {
  const { openedAt, events, state } = sitting;
  const at = (atMs: number) => new Date(openedAt.getTime() + atMs);
  const last = events.at(-1);
  const row = await transaction.sitting.create({
    data: {
      exerciseStoneId: place,
      studentId: actor.userId,
      attempt: sitting.attempt,
      openedAt,
      lastSeq: state.lastSeq,
      lastEventAt: last === undefined ? null : at(last.atMs),
      markCount: state.plot.marks.length,
      state: toColumn(SittingStateSchema, { ...state }),
    },
  });
  await transaction.sittingEvent.createMany({
    data: events.map((event) => ({
      sittingId: row.id,
      seq: event.seq,
      kind: event.kind,
      atMs: event.atMs,
      body: toColumn(SittingEventSchema, event),
      receivedAt: at(event.atMs),
    })),
  });
  return row.id;
}

async function writeHandIn(
  transaction: Transaction,
  { state, scored }: ScoredSitting,
  sittingId: string,
  handedInAt: Date,
  by: { readonly rubricVersionId: string; readonly referenceId: string },
) {
  const handIn = await transaction.handIn.create({
    data: {
      sittingId,
      plot: toColumn(PlotSchema, state.plot),
      prepared: toColumn(PreparedSchema, state.prepared),
      lastSeq: state.lastSeq,
      handedInAt,
    },
  });
  if (scored === null) return;
  await transaction.result.create({
    data: {
      handInId: handIn.id,
      ...by,
      engineVersion: scored.detail.engineVersion,
      stoneRevision: 1,
      totalHundredths: Math.round(scored.result.total * 100),
      result: toColumn(ScoreResultSchema, scored.result),
      detail: toColumn(ScoreDetailSchema, scored.detail),
      createdAt: new Date(handedInAt.getTime() + SCORED_AFTER_MS),
    },
  });
}

/** Writes the sittings of an exercise with their logs, hand-ins and results. Gives the ids of those handed in. */
export async function writeDemoSittings(
  transaction: Transaction,
  trail: DemoTrail,
  sittings: readonly ScoredSitting[],
  people: DemoPeople,
  { rubricVersionId, places }: WrittenExercise,
): Promise<string[]> {
  const handedIn: string[] = [];
  for (const sitting of sittings) {
    const actor = getDemoActor(people, sitting.login);
    const place = places.get(sitting.stone);
    if (place === undefined) throw new RangeError(`writeDemoSittings: no stone ${sitting.stone}`);
    const sittingId = await writeLog(transaction, sitting, actor, place.exerciseStoneId);
    const subject = { subjectKind: "sitting", subjectId: sittingId };
    trail.add(sitting.openedAt, actor, { action: "open-sitting", ...subject });
    if (sitting.handedInAt === null) continue;
    const { referenceId } = place;
    await writeHandIn(transaction, sitting, sittingId, sitting.handedInAt, { rubricVersionId, referenceId });
    trail.add(sitting.handedInAt, actor, { action: "hand-in", ...subject });
    handedIn.push(sittingId);
  }
  return handedIn;
}

/** Opens the debriefs of sittings to their students. */
export async function releaseDemoSittings(
  transaction: Transaction,
  trail: DemoTrail,
  sittingIds: readonly string[],
  by: DemoActor,
  releasedAt: Date,
): Promise<void> {
  await transaction.release.createMany({
    data: sittingIds.map((sittingId) => ({ sittingId, releasedById: by.userId, releasedAt })),
  });
  for (const subjectId of sittingIds) {
    trail.add(releasedAt, by, { action: "release-debrief", subjectKind: "sitting", subjectId });
  }
}
