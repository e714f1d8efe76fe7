/**
 * OneRoster 1.2 CSV, bulk: line items and results of a section (CSV Tables 1.1.1 and CSV Binding 1.2.1, 2023-08-22, as
 * far as check values 9.1 give them). A line item is an exercise, a result a student's points on it. Only these two files
 * are in the zip; the ids of section, term and school that they name are this program's own, since it keeps no roster
 * of the school's.
 */
import { strToU8, zipSync } from "fflate";
import { findDueAt, type Gradebook, type GradebookExercise, indexEntries } from "@/lib/exchange/gradebook";
import { type CsvCell, writePlainCsv } from "@/lib/exchange/write-csv";

export const LINE_ITEM_COLUMNS = [
  "sourcedId",
  "status",
  "dateLastModified",
  "title",
  "description",
  "assignDate",
  "dueDate",
  "classSourcedId",
  "categorySourcedId",
  "academicSessionSourcedId",
  "resultValueMin",
  "resultValueMax",
  "schoolSourcedId",
] as const;

export const RESULT_COLUMNS = [
  "sourcedId",
  "status",
  "dateLastModified",
  "lineItemSourcedId",
  "studentSourcedId",
  "scoreStatus",
  "score",
  "scoreDate",
  "comment",
  "textScore",
  "classSourcedId",
  "inProgress",
  "incomplete",
  "late",
  "missing",
] as const;

/** Every file that a 1.2 manifest names. */
const FILES = [
  "academicSessions",
  "categories",
  "classes",
  "classResources",
  "courseResources",
  "courses",
  "demographics",
  "enrollments",
  "lineItemLearningObjectiveIds",
  "lineItems",
  "lineItemScoreScales",
  "orgs",
  "resources",
  "resultLearningObjectiveIds",
  "results",
  "resultScoreScales",
  "roles",
  "scoreScales",
  "userProfiles",
  "userResources",
  "users",
] as const;

const WRITTEN: readonly string[] = ["lineItems", "results"];
const SCHOOL = "loupework-school";
const CATEGORY = "loupework-plotting";

const toDay = (at: Date) => at.toISOString().slice(0, 10);
const toSessionId = (term: string) =>
  `term-${term
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")}`;

/** `lineItems.csv`. */
export function writeLineItems({ sectionId, term, exercises }: Gradebook): string {
  return writePlainCsv(
    LINE_ITEM_COLUMNS,
    exercises.map(({ exerciseId, title, opensAt, dueAt, stones }) => [
      exerciseId,
      "",
      "",
      title,
      `Clarity plotting, ${stones} stones of 100 points each`,
      toDay(opensAt),
      toDay(dueAt),
      sectionId,
      CATEGORY,
      toSessionId(term),
      0,
      stones * 100,
      SCHOOL,
    ]),
  );
}

/** How far a student's work on an exercise is, in the standard's words. */
function toScoreStatus(exercise: GradebookExercise, handedIn: number, scored: number): string {
  if (handedIn === 0) return "not submitted";
  if (scored === 0) return "submitted";
  return scored === exercise.stones ? "fully graded" : "partially graded";
}

/** `results.csv`: a row for each student and exercise. Points of scored stones are added up; nothing scored, no score. */
export function writeResults(gradebook: Gradebook, now: Date): string {
  const find = indexEntries(gradebook);
  const rows = gradebook.students.flatMap(({ studentId }) =>
    gradebook.exercises.map((exercise): CsvCell[] => {
      const { exerciseId, stones } = exercise;
      const dueAt = findDueAt(gradebook, exercise, studentId);
      const entry = find(studentId, exerciseId);
      const [handedIn, scored] = [entry?.handedIn ?? 0, entry?.scored ?? 0];
      const isPastDue = dueAt < now;
      return [
        `${exerciseId}:${studentId}`,
        "",
        "",
        exerciseId,
        studentId,
        toScoreStatus(exercise, handedIn, scored),
        entry === undefined || scored === 0 ? null : entry.hundredths / 100,
        toDay(entry?.lastHandedInAt ?? now),
        "",
        "",
        gradebook.sectionId,
        String(handedIn > 0 && handedIn < stones),
        String(handedIn < stones),
        String(entry !== undefined && entry.lastHandedInAt > dueAt),
        String(handedIn === 0 && isPastDue),
      ];
    }),
  );
  return writePlainCsv(RESULT_COLUMNS, rows);
}

/** `manifest.csv`: what is in the zip and what is not. */
export function writeManifest(): string {
  return writePlainCsv(
    ["propertyName", "value"],
    [
      ["manifest.version", "1.0"],
      ["oneroster.version", "1.2"],
      ...FILES.map((file) => [`file.${file}`, WRITTEN.includes(file) ? "bulk" : "absent"]),
      ["source.systemName", "Loupework"],
      ["source.systemCode", "loupework"],
    ],
  );
}

/** The zip, files at its root. */
export function writeOneRoster(gradebook: Gradebook, now: Date): Uint8Array {
  return zipSync({
    "manifest.csv": strToU8(writeManifest()),
    "lineItems.csv": strToU8(writeLineItems(gradebook)),
    "results.csv": strToU8(writeResults(gradebook, now)),
  });
}
