import { requireAccess, requireRole } from "@/lib/access/require-access";
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { findSection, type SectionWithParts } from "@/lib/data/store/find-section";
import type { Gradebook, GradebookEntry } from "@/lib/exchange/gradebook";
import { toOwnDates } from "@/lib/plot/to-own-dates";
import { ensureTallySums } from "@/lib/workflows/tally/list-tally-sums";

/** The latest handed-in attempt of each student and stone, on whichever stone a retake of it was, added up by exercise. */
async function listEntries(exercises: SectionWithParts["exercises"]): Promise<GradebookEntry[]> {
  const exerciseOf = new Map(
    exercises.flatMap(({ id, stones }) => stones.map((place) => [place.id, id] as const)),
  );
  const sittings = await getDatabase().sitting.findMany({
    where: { exerciseStoneId: { in: [...exerciseOf.keys()] }, handIn: { isNot: null } },
    orderBy: [{ openedAt: "asc" }, { attempt: "asc" }],
    select: {
      studentId: true,
      exerciseStoneId: true,
      exerciseStone: { select: { retakes: { select: { studentId: true, replacesId: true } } } },
      handIn: { select: { handedInAt: true } },
      tally: { select: { totalHundredths: true } },
    },
  });
  // Later attempts overwrite.
  const placeOf = ({ studentId, exerciseStoneId, exerciseStone }: (typeof sittings)[number]) =>
    exerciseStone.retakes.find((one) => one.studentId === studentId)?.replacesId ?? exerciseStoneId;
  const latest = new Map(sittings.map((one) => [`${one.studentId} ${placeOf(one)}`, one]));
  const entries = new Map<string, GradebookEntry>();
  for (const { studentId, exerciseStoneId, handIn, tally } of latest.values()) {
    const exerciseId = exerciseOf.get(exerciseStoneId);
    if (exerciseId === undefined || handIn === null) continue;
    const key = `${studentId} ${exerciseId}`;
    const before = entries.get(key);
    const last = before?.lastHandedInAt ?? handIn.handedInAt;
    entries.set(key, {
      exerciseId,
      studentId,
      handedIn: (before?.handedIn ?? 0) + 1,
      scored: (before?.scored ?? 0) + (tally === null ? 0 : 1),
      hundredths: (before?.hundredths ?? 0) + (tally?.totalHundredths ?? 0),
      lastHandedInAt: new Date(Math.max(last.getTime(), handIn.handedInAt.getTime())),
    });
  }
  return [...entries.values()];
}

/**
 * The gradebook of a section: its enrolled students by name, its exercises by due date, and what each handed in. Points
 * count whether released or not. Throws AppError `not-found` or `not-allowed`.
 */
export async function exportGradebook(viewer: Viewer, sectionId: string): Promise<Gradebook> {
  requireRole(viewer, "read-sections");
  const { row } = requireAccess(viewer, "read-sections", await findSection(getDatabase(), sectionId));
  await ensureTallySums(row.exercises.map(({ id }) => id));
  return {
    sectionId: row.id,
    sectionName: row.name,
    term: row.term,
    exercises: row.exercises.map(({ id, title, opensAt, dueAt, stones }) => ({
      exerciseId: id,
      title,
      opensAt,
      dueAt,
      stones: stones.filter(({ isRetake }) => !isRetake).length,
    })),
    extensions: row.exercises.flatMap(({ id, dueAt, closesAt, opensAt, allowances }) =>
      allowances.map((allowance) => ({
        exerciseId: id,
        studentId: allowance.studentId,
        dueAt: toOwnDates({ opensAt, dueAt, closesAt }, allowance).dueAt,
      })),
    ),
    students: row.enrolments
      .map(({ student: { id, login, name } }) => ({ studentId: id, login, name }))
      .sort((a, b) => a.name.localeCompare(b.name, "en") || (a.login < b.login ? -1 : 1)),
    entries: await listEntries(row.exercises),
  };
}
