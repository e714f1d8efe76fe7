import { randomUUID } from "node:crypto";
import { countPlot } from "@/lib/agreement/count-plot";
import { CountsSchema } from "@/lib/agreement/counts-schema";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { toColumn } from "@/lib/data/store/to-column";
import { getLargeSkill, type LargeExercise } from "@/lib/demo/large-program";
import { simulateSitting } from "@/lib/demo/simulate-sitting";
import { PLOTS_FORMAT, PlotSchema } from "@/lib/plot/plots-file";
import { MarkOutcomeSchema } from "@/lib/plot/result-tally";
import { ScoreDetailSchema, ScoreResultSchema } from "@/lib/plot/score-result";
import { rebuildSitting } from "@/lib/plot/sitting-event";
import { SittingStateSchema } from "@/lib/plot/sitting-state";
import { toReference } from "@/lib/plot/stone";
import { PreparedSchema } from "@/lib/plot/student-view";
import { scorePlots } from "@/lib/scoring/score-plot";
import type { LargeTray } from "@/lib/workflows/demo/large/large-trays";

export interface LargeStudent {
  readonly userId: string;
  readonly login: string;
}

/** Where the rows of an exercise hang. */
export interface ExerciseIds {
  readonly exerciseId: string;
  readonly rubricVersionId: string;
  /** In the order of the tray's stones. */
  readonly exerciseStoneIds: readonly string[];
}

interface Sat {
  readonly student: LargeStudent;
  /** Place in the tray. */
  readonly place: number;
  readonly state: ReturnType<typeof rebuildSitting>;
  readonly openedAt: Date;
  readonly handedInAt: Date;
}

function simulateSittings(
  { simulated }: LargeTray,
  { title, opensAt, dueAt }: LargeExercise,
  week: number,
  students: readonly LargeStudent[],
): Sat[] {
  return students.flatMap((student) => {
    const skill = getLargeSkill(student.login, week);
    const random = createSeededRandom(`large/${student.login}/${title}`);
    let clockMs = opensAt.getTime() + random.next() * 0.8 * (dueAt.getTime() - opensAt.getTime());
    return simulated.map((stone, place) => {
      const { events, handedInAtMs } = simulateSitting(
        stone,
        skill,
        `large/${student.login}/${title}/${place}`,
      );
      const openedAt = new Date(clockMs);
      clockMs += handedInAtMs + 120_000;
      return {
        student,
        place,
        state: rebuildSitting(events),
        openedAt,
        handedInAt: new Date(openedAt.getTime() + handedInAtMs),
      };
    });
  });
}

/** The rows of one scored sitting. */
function toRows(tray: LargeTray, ids: ExerciseIds, sat: Sat, scored: ReturnType<typeof scorePlots>[number]) {
  const { student, place, state, openedAt, handedInAt } = sat;
  const [sittingId, handInId, resultId] = [randomUUID(), randomUUID(), randomUUID()];
  const exerciseStoneId = ids.exerciseStoneIds[place] ?? "";
  const reference = tray.simulated[place];
  if (reference === undefined) throw new RangeError(`toRows: no stone at ${place}`);
  const { result, detail } = scored;
  const totalHundredths = Math.round(result.total * 100);
  const counts = countPlot({
    reference: toReference(reference.stone),
    plotted: state.plot,
    result,
    scales: tray.resolved.scales,
  });
  const { lastSeq } = state;
  const studentId = student.userId;
  return {
    sitting: {
      id: sittingId,
      exerciseStoneId,
      studentId,
      openedAt,
      lastSeq,
      lastEventAt: handedInAt,
      markCount: state.plot.marks.length,
      state: toColumn(SittingStateSchema, { ...state }),
    },
    handIn: {
      id: handInId,
      sittingId,
      plot: toColumn(PlotSchema, state.plot),
      prepared: toColumn(PreparedSchema, state.prepared),
      lastSeq,
      handedInAt,
    },
    result: {
      id: resultId,
      handInId,
      referenceId: tray.stones[place]?.referenceId ?? "",
      rubricVersionId: ids.rubricVersionId,
      engineVersion: detail.engineVersion,
      stoneRevision: 1,
      totalHundredths,
      result: toColumn(ScoreResultSchema, result),
      detail: toColumn(ScoreDetailSchema, detail),
      createdAt: handedInAt,
    },
    tally: {
      resultId,
      sittingId,
      exerciseId: ids.exerciseId,
      exerciseStoneId,
      studentId,
      attempt: 1,
      handedInAt,
      totalHundredths,
      clarityGap: counts.grades.clarity?.steps ?? null,
      counts: toColumn(CountsSchema, counts),
      outcome: toColumn(MarkOutcomeSchema, {
        found: result.found.map((pair) => pair.reference),
        overlooked: result.overlooked,
      }),
    },
  };
}

/** Everyone's sittings on all stones of an exercise, scored by the engine and counted, as rows to be written. */
export function simulateExercise(
  tray: LargeTray,
  exercise: LargeExercise,
  week: number,
  students: readonly LargeStudent[],
  ids: ExerciseIds,
) {
  const sittings = simulateSittings(tray, exercise, week, students);
  const plots = sittings.map(({ student, place, state }) => ({
    stone: tray.simulated[place]?.stone.id ?? "",
    by: student.login,
    ...state.plot,
  }));
  const scored = scorePlots(tray.resolved, { format: PLOTS_FORMAT, version: 1, plots });
  return sittings.flatMap((sat, index) => {
    const one = scored[index];
    return one === undefined ? [] : [toRows(tray, ids, sat, one)];
  });
}
