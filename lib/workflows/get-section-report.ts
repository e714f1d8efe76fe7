import { z } from "zod";
import { refuseAsNotFound, requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { NO_COUNTS } from "@/lib/agreement/counts";
import { deriveRates } from "@/lib/agreement/derive-rates";
import { findNeeds, type StudentEvidence } from "@/lib/agreement/find-needs";
import type { SectionReport } from "@/lib/agreement/section-report";
import { toUndefined } from "@/lib/agreement/statistic";
import { getDatabase } from "@/lib/data/store/database";
import { listBlindStones } from "@/lib/data/store/find-open-reading";
import { findSection, type SectionWithParts } from "@/lib/data/store/find-section";
import { parseInput } from "@/lib/plot/parse-input";
import { toOwnDates } from "@/lib/plot/to-own-dates";
import { type AddedSection, addSection } from "@/lib/workflows/tally/add-section";
import { fromItem } from "@/lib/workflows/tally/fit-detection";

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
  { students: known, fit, whole }: AddedSection,
): Promise<StudentEvidence[]> {
  const enrolled = section.enrolments.map(({ student }) => student);
  const others = [...known.keys()].filter((id) => !enrolled.some((one) => one.id === id));
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
  const nothing = { rates: deriveRates(NO_COUNTS, whole.scales), found: 0, overlooked: 0 };
  return people
    .map(({ id, name }) => {
      return {
        studentId: id,
        name,
        ...(known.get(id) ?? nothing),
        ability: abilities.get(id) ?? toUndefined("nothing was handed in and scored yet"),
        ...(counted.get(id) ?? { due: 0, handedInOfDue: 0 }),
      };
    })
    .sort((a, b) => a.name.localeCompare(b.name, "en") || (a.studentId < b.studentId ? -1 : 1));
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
  const leftOut = await listLeftOut(viewer, shown);
  const added = await addSection(shown, new Set(leftOut.keys()));
  const { rates, fit } = added;
  const students = await listEvidence(row, shown, added);
  const places = new Map(shown.flatMap(({ stones }) => stones.map(({ stoneId, stone }) => [stoneId, stone])));
  return {
    sectionId: row.id,
    name: row.name,
    term: row.term,
    instructors: row.instructors.map(({ instructor }) => instructor.name).sort(),
    exercises: row.exercises.map(({ id, title }) => ({ exerciseId: id, title, isShown: ids.includes(id) })),
    rates,
    coefficients: added.coefficients,
    clusters: added.clusters,
    otherScale: added.otherScale,
    weeks: added.weeks,
    stones: added.stones.flatMap((own) => {
      const stone = places.get(own.stoneId);
      return stone === undefined ? [] : [{ ...own, ...stone }];
    }),
    students,
    needs: findNeeds(students, rates),
    marks: fit.items.map((item) => {
      const { stoneId, markId } = fromItem(item.item);
      return { ...item, markId, stoneLabel: places.get(stoneId)?.label ?? "" };
    }),
    itemErrors: fit.itemErrors,
    leftOut: [...leftOut.values()].sort(),
  };
}
