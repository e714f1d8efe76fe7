/** A school for the load script: sections of students, an exercise each, and a stone opened by every student. */
import type { Viewer } from "@/lib/access/viewer";
import { getDatabase } from "@/lib/data/store/database";
import { createExercise } from "@/lib/workflows/create-exercise";
import { createSection } from "@/lib/workflows/create-section";
import { createStone } from "@/lib/workflows/create-stone";
import { createTray } from "@/lib/workflows/create-tray";
import { hashPassword } from "@/lib/workflows/hash-password";
import { openSitting } from "@/lib/workflows/open-sitting";
import { saveReference } from "@/lib/workflows/save-reference";
import { makePerson } from "@/tests/support/school";
import { REFERENCE } from "@/tests/support/school-marks";

const PASSWORD = "a password of the load script";

export interface LoadBench {
  readonly login: string;
  readonly sittingId: string;
}

export interface LoadClass {
  readonly password: string;
  readonly benches: readonly LoadBench[];
  readonly watchers: readonly string[];
}

async function makeStone(director: Viewer): Promise<string> {
  const { trayId } = await createTray(director, { name: "Load", notes: "" });
  const body = { cut: "round-brilliant" as const, proportions: { tablePct: 57 } };
  const { stoneId } = await createStone(director, { trayId, label: "L-1", body });
  await saveReference(director, { stoneId, baseVersion: 0, reference: REFERENCE, note: "" });
  return stoneId;
}

async function setExercise(director: Viewer, sectionId: string, stoneId: string): Promise<string> {
  const day = 86_400_000;
  const at = (days: number) => new Date(Date.now() + days * day).toISOString();
  const { exerciseId } = await createExercise(director, {
    sectionId,
    title: "Load",
    notes: "",
    opensAt: at(-1),
    dueAt: at(1),
    closesAt: at(2),
    rules: {},
    stoneIds: [stoneId],
  } as Parameters<typeof createExercise>[1]);
  const row = await getDatabase().exerciseStone.findFirstOrThrow({ where: { exerciseId } });
  return row.id;
}

/** Makes `sections` sections of `students` in all, each taught by an instructor of its own; and a director. */
export async function makeClass(students: number, sections: number): Promise<LoadClass> {
  const hash = await hashPassword(PASSWORD);
  const director = await makePerson("load-director", "Dora Director", "director", hash);
  const stoneId = await makeStone(director);
  const benches: LoadBench[] = [];
  const watchers = ["load-director"];
  for (let index = 0; index < sections; index += 1) {
    const login = `load-instructor-${index}`;
    const instructor = await makePerson(login, `Instructor ${index}`, "instructor", hash);
    watchers.push(login);
    const made = await createSection(director, {
      name: `Section ${index}`,
      term: "now",
      instructorIds: [instructor.userId],
    });
    const exerciseStoneId = await setExercise(director, made.sectionId, stoneId);
    for (let place = index; place < students; place += sections) {
      const student = await makePerson(`load-${place}`, `Student ${place}`, "student", hash);
      await getDatabase().enrolment.create({
        data: { sectionId: made.sectionId, studentId: student.userId },
      });
      const { sittingId } = await openSitting(student, { exerciseStoneId });
      benches.push({ login: `load-${place}`, sittingId });
    }
  }
  return { password: PASSWORD, benches, watchers };
}
