import { z } from "zod";
import { refuseAsNotFound, requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { deriveClusterRates } from "@/lib/agreement/cluster-rates";
import { deriveRates } from "@/lib/agreement/derive-rates";
import { findNeeds, type StudentEvidence } from "@/lib/agreement/find-needs";
import type { RaschFit } from "@/lib/agreement/fit-rasch";
import { deriveGradeCoefficients } from "@/lib/agreement/grade-agreement";
import type { JoinedCounts } from "@/lib/agreement/join-counts";
import { rankDifficulty } from "@/lib/agreement/rank-difficulty";
import type { ReportStone, SectionReport } from "@/lib/agreement/section-report";
import { toUndefined } from "@/lib/agreement/statistic";
import { getDatabase } from "@/lib/data/store/database";
import { listBlindStones } from "@/lib/data/store/find-open-reading";
import { findSection, type SectionWithParts } from "@/lib/data/store/find-section";
import { parseInput } from "@/lib/plot/parse-input";
import { toOwnDates } from "@/lib/plot/to-own-dates";
import { fitDetection, fromItem } from "@/lib/workflows/tally/fit-detection";
import { type ExerciseScales, joinSums, joinSumsByKey, readScales } from "@/lib/workflows/tally/join-sums";
import { listAllTallySums, type TallySums } from "@/lib/workflows/tally/list-tally-sums";

const InputSchema = z.strictObject({
  sectionId: z.string(),
  /** One exercise of the section; all when left out. */
  exerciseId: z.string().optional(),
});

type Exercises = SectionWithParts["exercises"];

/** The stones of these exercises that the viewer is reading blind, id to label: nothing that is said here covers them. */
async function listLeftOut(viewer: Viewer, exercises: Exercises): Promise<Map<string, string>> {
  const set = new Set(exercises.flatMap(({ stones }) => stones.map(({ stoneId }) => stoneId)));
  return new Map([...(await listBlindStones(viewer))].filter(([stoneId]) => set.has(stoneId)));
}

/** The stones set for all that are past due for a student, by the dates that hold for them. */
function listDue(exercises: Exercises, studentId: string, now: Date): string[] {
  const isDue = (exercise: Exercises[number]) => {
    const allowance = exercise.allowances.find((one) => one.studentId === studentId);
    return toOwnDates(exercise, allowance).dueAt < now;
  };
  return exercises
    .filter(isDue)
    .flatMap(({ stones }) => stones.filter(({ isRetake }) => !isRetake).map(({ id }) => id));
}

/** How many stones are past due for each student, and how many of those they have handed in, scored or not. */
async function countDue(exercises: Exercises, studentIds: readonly string[]) {
  const now = new Date();
  const dueOf = new Map(studentIds.map((id) => [id, new Set(listDue(exercises, id, now))]));
  const due = [...new Set([...dueOf.values()].flatMap((one) => [...one]))];
  const sat = await getDatabase().sitting.findMany({
    where: { exerciseStoneId: { in: due }, studentId: { in: [...studentIds] }, handIn: { isNot: null } },
    distinct: ["exerciseStoneId", "studentId"],
    select: { studentId: true, exerciseStoneId: true },
  });
  const counts = new Map([...dueOf].map(([id, own]) => [id, { due: own.size, handedInOfDue: 0 }]));
  for (const { studentId, exerciseStoneId } of sat) {
    const own = counts.get(studentId);
    if (own !== undefined && dueOf.get(studentId)?.has(exerciseStoneId) === true) own.handedInOfDue += 1;
  }
  return counts;
}

/** Every student who is enrolled or has sat something, by name. */
async function listEvidence(
  section: SectionWithParts,
  shown: Exercises,
  byStudent: ReadonlyMap<string, JoinedCounts>,
  fit: RaschFit,
  whole: JoinedCounts,
): Promise<StudentEvidence[]> {
  const enrolled = section.enrolments.map(({ student }) => student);
  const others = [...byStudent.keys()].filter((id) => !enrolled.some((one) => one.id === id));
  const gone = await getDatabase().user.findMany({
    where: { id: { in: others } },
    select: { id: true, name: true },
  });
  const people = [...enrolled, ...gone];
  const counted = await countDue(
    shown,
    people.map(({ id }) => id),
  );
  const abilities = new Map(fit.persons.map(({ person, ability }) => [person, ability]));
  const nothing = joinSums([], new Map(), whole.scales);
  return people
    .map(({ id, name }) => {
      const { counts, scales } = byStudent.get(id) ?? nothing;
      return {
        studentId: id,
        name,
        rates: deriveRates(counts, scales),
        found: counts.found,
        overlooked: counts.overlooked,
        ability: abilities.get(id) ?? toUndefined("nothing was handed in and scored yet"),
        ...(counted.get(id) ?? { due: 0, handedInOfDue: 0 }),
      };
    })
    .sort((a, b) => a.name.localeCompare(b.name, "en") || (a.studentId < b.studentId ? -1 : 1));
}

interface StonesGround {
  readonly sums: TallySums["stone"];
  readonly shown: Exercises;
  readonly scales: ExerciseScales;
  readonly fit: RaschFit;
  readonly whole: JoinedCounts;
}

/** The stones that were sat, the hardest first; a stone that is set twice is one. */
function listStones({ sums: rows, shown, scales, fit, whole }: StonesGround): ReportStone[] {
  const places = new Map(shown.flatMap(({ stones }) => stones.map((place) => [place.id, place] as const)));
  const sums = rows.map((row) => ({
    ...row,
    key: places.get(row.key)?.stoneId ?? row.key,
  }));
  const byStone = joinSumsByKey(sums, scales, whole.scales);
  const byId = new Map([...places.values()].map((place) => [place.stoneId, place.stone]));
  const ranked = rankDifficulty(fit.items, (item) => fromItem(item).stoneId);
  return ranked.flatMap((rank) => {
    const [joined, stone] = [byStone.get(rank.stoneId), byId.get(rank.stoneId)];
    if (joined === undefined || stone === undefined) return [];
    return [{ ...rank, ...stone, rates: deriveRates(joined.counts, joined.scales) }];
  });
}

/**
 * How a section agrees with its references, over all of its exercises or one. From sums of tallies and from the outcomes of
 * this section's marks; no result is read. Covers results that are not released, and leaves out stones that the viewer is
 * reading blind: for staff. Throws AppError `not-found`
 * or `not-allowed`.
 */
export async function getSectionReport(
  viewer: Viewer,
  input: z.input<typeof InputSchema>,
): Promise<SectionReport> {
  requireRole(viewer, "read-sections");
  const { sectionId, exerciseId } = parseInput(InputSchema, input);
  const { row } = requireAccess(viewer, "read-sections", await findSection(getDatabase(), sectionId));
  const shown = row.exercises.filter(({ id }) => exerciseId === undefined || id === exerciseId);
  if (exerciseId !== undefined && shown.length === 0) throw refuseAsNotFound();
  const ids = shown.map(({ id }) => id);
  const scales = readScales(shown);
  const leftOut = await listLeftOut(viewer, shown);
  const without = new Set(leftOut.keys());
  const sums = await listAllTallySums(ids, without);
  const whole = joinSums(sums.exercise, scales);
  const byStudent = joinSumsByKey(sums.student, scales, whole.scales);
  const byWeek = joinSumsByKey(sums.week, scales, whole.scales);
  const fit = await fitDetection(ids, without);
  const rates = deriveRates(whole.counts, whole.scales);
  const students = await listEvidence(row, shown, byStudent, fit, whole);
  const stones = listStones({ sums: sums.stone, shown, scales, fit, whole });
  const labels = new Map(stones.map(({ stoneId, label }) => [stoneId, label]));
  const [clarity, scale] = [whole.counts.grades.clarity, whole.scales.clarity];
  return {
    sectionId: row.id,
    name: row.name,
    term: row.term,
    instructors: row.instructors.map(({ instructor }) => instructor.name).sort(),
    exercises: row.exercises.map(({ id, title }) => ({ exerciseId: id, title, isShown: ids.includes(id) })),
    rates,
    coefficients: clarity && scale ? deriveGradeCoefficients(clarity, scale) : null,
    clusters: deriveClusterRates([...byStudent.values()].map(({ counts }) => counts)),
    otherScale: whole.otherScale,
    weeks: [...byWeek].map(([week, joined]) => ({ week, rates: deriveRates(joined.counts, joined.scales) })),
    stones,
    students,
    needs: findNeeds(students, rates),
    marks: fit.items.map((item) => {
      const { stoneId, markId } = fromItem(item.item);
      return { ...item, markId, stoneLabel: labels.get(stoneId) ?? "" };
    }),
    itemErrors: fit.itemErrors,
    leftOut: [...leftOut.values()].sort(),
  };
}
