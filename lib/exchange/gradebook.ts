/** A section's gradebook: what every export of points is written from. */

export interface GradebookExercise {
  readonly exerciseId: string;
  readonly title: string;
  readonly opensAt: Date;
  readonly dueAt: Date;
  readonly stones: number;
}

/** A student's work on an exercise: the latest attempt on each stone. */
export interface GradebookEntry {
  readonly exerciseId: string;
  readonly studentId: string;
  /** Stones handed in, and those of them that are scored. */
  readonly handedIn: number;
  readonly scored: number;
  readonly hundredths: number;
  readonly lastHandedInAt: Date;
}

export interface Gradebook {
  readonly sectionId: string;
  readonly sectionName: string;
  readonly term: string;
  readonly exercises: readonly GradebookExercise[];
  readonly students: readonly { readonly studentId: string; readonly login: string; readonly name: string }[];
  readonly entries: readonly GradebookEntry[];
  /** Who may hand an exercise in later than it is due. */
  readonly extensions: readonly {
    readonly exerciseId: string;
    readonly studentId: string;
    readonly dueAt: Date;
  }[];
}

/** When an exercise is due for a student. */
export function findDueAt(
  { extensions }: Gradebook,
  { exerciseId, dueAt }: GradebookExercise,
  studentId: string,
): Date {
  const own = extensions.find((one) => one.exerciseId === exerciseId && one.studentId === studentId);
  return own?.dueAt ?? dueAt;
}

/** An entry by student and exercise; undefined where nothing was handed in. */
export function indexEntries({ entries }: Gradebook) {
  const byKey = new Map(entries.map((entry) => [`${entry.studentId} ${entry.exerciseId}`, entry]));
  return (studentId: string, exerciseId: string) => byKey.get(`${studentId} ${exerciseId}`);
}
