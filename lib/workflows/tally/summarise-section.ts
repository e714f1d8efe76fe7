import { toMeasureClusters } from "@/lib/agreement/build-program-groups";
import type { JoinedCounts } from "@/lib/agreement/join-counts";
import type { SectionSummary } from "@/lib/agreement/program-report";
import { listExercisesToAdd, type SectionToAdd } from "@/lib/data/store/list-sections-to-add";
import { joinSums, joinSumsByKey, readScales } from "@/lib/workflows/tally/join-sums";
import { KeptByStamps } from "@/lib/workflows/tally/kept-by-stamps";
import { listAllTallySums } from "@/lib/workflows/tally/list-tally-sums";

type AddedSection = Pick<SectionSummary, "whole" | "clusters" | "stones"> & { readonly studentsSeen: number };

/** Sections of so many are remembered. */
const kept = new KeptByStamps<AddedSection>(400);

async function addSection(section: SectionToAdd): Promise<AddedSection> {
  const exercises = await listExercisesToAdd(section.exercises.map(({ id }) => id));
  const scales = readScales(exercises);
  const sums = await listAllTallySums(exercises.map(({ id }) => id));
  const whole = joinSums(sums.exercise, scales);
  const byStudent = [...joinSumsByKey(sums.student, scales, whole.scales).values()];
  const stoneOf = new Map(exercises.flatMap(({ stones }) => stones.map(({ id, stoneId }) => [id, stoneId])));
  const stoneSums = sums.stone.map((row) => ({ ...row, key: stoneOf.get(row.key) ?? row.key }));
  const clusters = byStudent.map(({ counts }) => toMeasureClusters(counts));
  return {
    whole,
    clusters: {
      found: clusters.map(({ found }) => found),
      exact: clusters.map(({ exact }) => exact),
      "within-one": clusters.map((own) => own["within-one"]),
    },
    stones: joinSumsByKey(stoneSums, scales, whole.scales) satisfies ReadonlyMap<string, JoinedCounts>,
    studentsSeen: byStudent.length,
  };
}

/** A section added up from sums, remembered by their stamps, which are its exercises'. The caller has asked lib/access. */
export async function summariseSection(
  section: SectionToAdd,
  stamps: ReadonlyMap<string, string>,
): Promise<SectionSummary> {
  const own = new Map(section.exercises.map(({ id }) => [id, stamps.get(id) ?? ""]));
  const { value } = await kept.get(section.id, own, () => addSection(section));
  const { studentsSeen, ...added } = value;
  const opens = section.exercises.map(({ opensAt }) => opensAt.toISOString()).sort();
  return {
    sectionId: section.id,
    name: section.name,
    term: section.term,
    instructors: section.instructors
      .map(({ instructorId, instructor }) => ({ id: instructorId, name: instructor.name }))
      .sort((a, b) => a.name.localeCompare(b.name, "en")),
    beganAt: opens[0] ?? section.createdAt.toISOString(),
    students: Math.max(studentsSeen, section._count.enrolments),
    ...added,
  };
}
