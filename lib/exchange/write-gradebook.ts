import { type Gradebook, indexEntries } from "@/lib/exchange/gradebook";
import { type CsvCell, writeCsv } from "@/lib/exchange/write-csv";

/**
 * The gradebook as CSV: a row for each student, for each exercise the points of its scored stones added up and how many
 * were handed in. An exercise of which nothing is scored has no points, which is not 0.
 */
export function writeGradebook(gradebook: Gradebook): string {
  const find = indexEntries(gradebook);
  const header = [
    "Student",
    "Sign-in name",
    ...gradebook.exercises.flatMap(({ title, stones }) => [
      `${title}, points of ${stones * 100}`,
      `${title}, stones handed in of ${stones}`,
    ]),
  ];
  const rows = gradebook.students.map(({ studentId, login, name }): CsvCell[] => [
    name,
    login,
    ...gradebook.exercises.flatMap(({ exerciseId }): CsvCell[] => {
      const entry = find(studentId, exerciseId);
      if (entry === undefined) return [null, 0];
      return [entry.scored === 0 ? null : entry.hundredths / 100, entry.handedIn];
    }),
  ]);
  return writeCsv(header, rows);
}
