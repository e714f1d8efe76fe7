import { z } from "zod";
import { refuseAsNotFound, requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import type { Counts } from "@/lib/agreement/counts";
import { CountsSchema } from "@/lib/agreement/counts-schema";
import { deriveRates, type Rates } from "@/lib/agreement/derive-rates";
import { type JoinedCounts, joinCounts } from "@/lib/agreement/join-counts";
import { toUndefined } from "@/lib/agreement/statistic";
import { getDatabase, runInTransaction } from "@/lib/data/store/database";
import { listBlindStones } from "@/lib/data/store/find-open-reading";
import { findOwnLabel } from "@/lib/data/store/find-own-label";
import { listSatAgain } from "@/lib/data/store/find-sitting";
import { findStudent } from "@/lib/data/store/find-student";
import {
  listReleasedTallies,
  listReleasedUncounted,
  type ReleasedTally,
} from "@/lib/data/store/list-released-tallies";
import { parseColumn } from "@/lib/data/store/parse-column";
import { ExerciseTermsSchema, resolveTerms } from "@/lib/plot/exercise-terms";
import type { Scales } from "@/lib/plot/grades";
import { parseInput } from "@/lib/plot/parse-input";
import { type ProgressView, ProgressViewSchema } from "@/lib/plot/progress-view";
import { toWeek } from "@/lib/plot/result-tally";
import { writeTallies } from "@/lib/workflows/tally/write-tallies";

const InputSchema = z.strictObject({
  studentId: z.string(),
  /** For staff: the section in which they look at the student. */
  sectionId: z.string().optional(),
});

interface CountedTally {
  readonly tally: ReleasedTally;
  readonly counts: Counts;
  readonly scales: Scales;
}

function readTally(tally: ReleasedTally): CountedTally {
  const terms = parseColumn(ExerciseTermsSchema, tally.exercise.terms, "Exercise.terms");
  return {
    tally,
    counts: parseColumn(CountsSchema, tally.counts, "ResultTally.counts"),
    scales: resolveTerms(terms).scales,
  };
}

const NOTHING_GRADED = toUndefined("no clarity grade was given");

function toWeeks(read: readonly CountedTally[], whole: JoinedCounts) {
  const byWeek = new Map<string, CountedTally[]>();
  for (const one of read) {
    const week = toWeek(one.tally.handedInAt);
    byWeek.set(week, [...(byWeek.get(week) ?? []), one]);
  }
  return [...byWeek].map(([week, own]) => {
    const { counts, scales } = joinCounts(own, whole.scales);
    const { plots, grades, detection, strays } = deriveRates(counts, scales);
    const clarity = grades.clarity;
    return {
      week,
      plots,
      graded: clarity?.graded ?? 0,
      withinOne: clarity?.withinOne ?? NOTHING_GRADED,
      detection,
      strays,
    };
  });
}

/** What each stone is called: to staff by its label, to the student by what they know it as. */
async function listLabels(viewer: Viewer, read: readonly CountedTally[]): Promise<Map<string, string>> {
  const labels = new Map<string, string>();
  for (const { tally } of read) {
    const { exerciseStone, sittingId } = tally;
    const label =
      viewer.role === "student"
        ? await findOwnLabel(getDatabase(), exerciseStone, viewer.userId)
        : exerciseStone.stone.label;
    labels.set(sittingId, label);
  }
  return labels;
}

function toView(
  studentName: string,
  read: readonly CountedTally[],
  rates: Rates,
  whole: JoinedCounts,
  labels: ReadonlyMap<string, string>,
  satAgain: ReadonlySet<string>,
) {
  const clarity = rates.grades.clarity;
  return {
    studentName,
    plots: rates.plots,
    meanTotal: rates.meanTotal,
    exact: clarity?.exact ?? NOTHING_GRADED,
    withinOne: clarity?.withinOne ?? NOTHING_GRADED,
    bias: clarity?.bias ?? NOTHING_GRADED,
    detection: rates.detection,
    straysPerPlot: rates.straysPerPlot,
    strays: rates.strays,
    characteristics: rates.characteristics
      .filter(({ reference }) => reference > 0)
      .map(({ characteristic, reference, found, detection }) => ({
        characteristic,
        reference,
        found,
        detection,
      })),
    weeks: toWeeks(read, whole),
    stones: [...read].reverse().map(({ tally }) => ({
      sittingId: tally.sittingId,
      label: labels.get(tally.sittingId) ?? "",
      exerciseTitle: tally.exercise.title,
      handedInAt: tally.handedInAt.toISOString(),
      total: tally.totalHundredths / 100,
      isClosed: satAgain.has(tally.exerciseStone.id),
    })),
  };
}

/**
 * How a student has been doing, from debriefs that are released to them and nothing else: what is not released changes no
 * figure and no count, for staff as for the student. A student asks for their own over all sections; staff name the section
 * that they look in, and whoever of them reads a stone blind gets nothing of it. Throws AppError `not-found` or `not-allowed`.
 */
export async function getProgress(viewer: Viewer, input: z.input<typeof InputSchema>): Promise<ProgressView> {
  requireRole(viewer, "read-progress");
  const { studentId, sectionId } = parseInput(InputSchema, input);
  // A section's page is for staff: what is there for its students is their own page.
  if (viewer.role === "student" && sectionId !== undefined) throw refuseAsNotFound();
  const within = viewer.role === "student" ? null : (sectionId ?? "");
  const database = getDatabase();
  const student = requireAccess(viewer, "read-progress", await findStudent(database, studentId, within));
  const uncounted = await listReleasedUncounted(database, studentId, within);
  if (uncounted.length > 0) await runInTransaction((transaction) => writeTallies(transaction, uncounted));
  const blind = await listBlindStones(viewer);
  const tallies = await listReleasedTallies(database, studentId, within);
  const read = tallies.filter(({ exerciseStone }) => !blind.has(exerciseStone.stone.id)).map(readTally);
  const whole = joinCounts(read);
  const rates = deriveRates(whole.counts, whole.scales);
  const leftOut = tallies.flatMap(({ exerciseStone: { stone } }) => blind.get(stone.id) ?? []);
  const satAgain = viewer.role === "student" ? await listSatAgain(database, studentId) : new Set<string>();
  return ProgressViewSchema.parse({
    ...toView(student.name, read, rates, whole, await listLabels(viewer, read), satAgain),
    leftOut: [...new Set(leftOut)].sort(),
  });
}
