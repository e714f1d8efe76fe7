import { randomUUID } from "node:crypto";
import { countPlot } from "@/lib/agreement/count-plot";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { getLargeSkill, LARGE_PROGRAM, type LargeExercise } from "@/lib/demo/large-program";
import { simulateSitting } from "@/lib/demo/simulate-sitting";
import { PLOTS_FORMAT } from "@/lib/plot/plots-file";
import { rebuildSitting } from "@/lib/plot/sitting-event";
import { toReference } from "@/lib/plot/stone";
import { scorePlots } from "@/lib/scoring/score-plot";
import type { LargeTray } from "@/lib/workflows/demo/large/large-trays";

export interface LargeStudent {
  readonly userId: string;
  /** Whose work this student's is (`simulatePool`). */
  readonly double: number;
}

/** Where the rows of an exercise hang. */
export interface ExerciseIds {
  readonly exerciseId: string;
  readonly rubricVersionId: string;
  /** In the order of the tray's stones. */
  readonly exerciseStoneIds: readonly string[];
}

/** A scored and counted plot, its columns as JSON texts. */
interface PooledPlot {
  readonly lastSeq: number;
  readonly markCount: number;
  readonly lastsMs: number;
  readonly state: string;
  readonly plot: string;
  readonly prepared: string;
  readonly engineVersion: string;
  readonly totalHundredths: number;
  readonly result: string;
  readonly detail: string;
  readonly clarityGap: number | null;
  readonly counts: string;
  readonly outcome: string;
}

/** `pool[student][place of the stone]`. */
export type PlotPool = readonly (readonly PooledPlot[])[];

type Scored = ReturnType<typeof scorePlots>[number];
type State = ReturnType<typeof rebuildSitting>;

function toPooled(tray: LargeTray, place: number, state: State, lastsMs: number, scored: Scored): PooledPlot {
  const simulated = tray.simulated[place];
  if (simulated === undefined) throw new RangeError(`toPooled: no stone at ${place}`);
  const { result, detail } = scored;
  const counts = countPlot({
    reference: toReference(simulated.stone),
    plotted: state.plot,
    result,
    scales: tray.resolved.scales,
  });
  return {
    lastSeq: state.lastSeq,
    markCount: state.plot.marks.length,
    lastsMs,
    state: JSON.stringify(state),
    plot: JSON.stringify(state.plot),
    prepared: JSON.stringify(state.prepared),
    engineVersion: detail.engineVersion,
    totalHundredths: Math.round(result.total * 100),
    result: JSON.stringify(result),
    detail: JSON.stringify(detail),
    clarityGap: counts.grades.clarity?.steps ?? null,
    counts: JSON.stringify(counts),
    outcome: JSON.stringify({
      found: result.found.map(({ reference }) => reference),
      overlooked: result.overlooked,
    }),
  };
}

/**
 * The work of as many students as a section has on a tray in a week, simulated and scored by the engine: what sections of
 * one cohort draw from.
 */
export function simulatePool(tray: LargeTray, cohort: number, week: number): PlotPool {
  const students = Array.from({ length: LARGE_PROGRAM.studentsPerSection }, (_, i) => `${cohort}/${i}`);
  const sat = students.flatMap((student) => {
    const skill = getLargeSkill(student, week);
    return tray.simulated.map((stone, place) => {
      const { events, handedInAtMs } = simulateSitting(stone, skill, `large/${student}/${week}/${place}`);
      return { student, place, state: rebuildSitting(events), handedInAtMs };
    });
  });
  const plots = sat.map(({ student, place, state }) => ({
    stone: tray.simulated[place]?.stone.id ?? "",
    by: student,
    ...state.plot,
  }));
  const scored = scorePlots(tray.resolved, { format: PLOTS_FORMAT, version: 1, plots });
  return students.map((_, i) =>
    tray.simulated.map((_stone, place) => {
      const at = i * tray.simulated.length + place;
      const [one, result] = [sat[at], scored[at]];
      if (one === undefined || result === undefined) throw new RangeError(`simulatePool: no plot ${at}`);
      return toPooled(tray, place, one.state, one.handedInAtMs, result);
    }),
  );
}

/** The rows of one sitting. */
function toRows(
  {
    resultId,
    openedAt,
    studentId,
    referenceId,
  }: Record<"resultId" | "studentId" | "referenceId", string> & {
    openedAt: Date;
  },
  exerciseStoneId: string,
  ids: ExerciseIds,
  pooled: PooledPlot,
) {
  const [sittingId, handInId] = [randomUUID(), randomUUID()];
  const handedInAt = new Date(openedAt.getTime() + pooled.lastsMs);
  const { lastSeq, totalHundredths, engineVersion } = pooled;
  const key = { sittingId, exerciseStoneId, studentId };
  return {
    sitting: {
      id: sittingId,
      exerciseStoneId,
      studentId,
      openedAt,
      lastSeq,
      lastEventAt: handedInAt,
      markCount: pooled.markCount,
      state: pooled.state,
    },
    handIn: { id: handInId, sittingId, plot: pooled.plot, prepared: pooled.prepared, lastSeq, handedInAt },
    result: {
      id: resultId,
      handInId,
      referenceId,
      rubricVersionId: ids.rubricVersionId,
      engineVersion,
      stoneRevision: 1,
      totalHundredths,
      result: pooled.result,
      detail: pooled.detail,
      isCurrent: true,
      createdAt: handedInAt,
    },
    tally: {
      resultId,
      ...key,
      exerciseId: ids.exerciseId,
      attempt: 1,
      handedInAt,
      totalHundredths,
      clarityGap: pooled.clarityGap,
      counts: pooled.counts,
      outcome: pooled.outcome,
    },
  };
}

/** Everyone's sittings on all stones of an exercise as rows to be written: each student's work is their double's. */
export function layOutExercise(
  tray: LargeTray,
  { opensAt, dueAt, title }: LargeExercise,
  students: readonly LargeStudent[],
  pool: PlotPool,
  ids: ExerciseIds,
) {
  return students.flatMap(({ userId, double }) => {
    const random = createSeededRandom(`large/${userId}/${title}`);
    let clockMs = Math.round(opensAt.getTime() + random.next() * 0.8 * (dueAt.getTime() - opensAt.getTime()));
    return (pool[double] ?? []).map((pooled, place) => {
      const openedAt = new Date(clockMs);
      clockMs += Math.round(pooled.lastsMs) + 120_000;
      const referenceId = tray.stones[place]?.referenceId ?? "";
      const exerciseStoneId = ids.exerciseStoneIds[place] ?? "";
      const at = { resultId: randomUUID(), studentId: userId, referenceId, openedAt };
      return toRows(at, exerciseStoneId, ids, pooled);
    });
  });
}
