/** What the demo shows of the rules that hold for one student: an exercise by every rule, more time, and a retake. */
import type { Transaction } from "@/lib/data/store/database";
import { type DemoRetake, UNSEEN_EXERCISE } from "@/lib/demo/demo-exercises";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import type { DemoActor, DemoTrail } from "@/lib/workflows/demo/demo-trail";
import { type WrittenExercise, writeDemoExercise } from "@/lib/workflows/demo/write-demo-exercise";
import { type DemoPeople, getDemoActor } from "@/lib/workflows/demo/write-demo-people";
import type { DemoTray } from "@/lib/workflows/demo/write-demo-tray";

const HOUR_MS = 3_600_000;
const AN_HOUR_AGO = 1;
/** Before the one that was sat was opened. */
const RETAKES_AGO = 2;

/** Sets the exercise on unseen stones for the day class, with one student's extension. Nobody has begun it. */
export async function writeDemoUnseen(
  transaction: Transaction,
  trail: DemoTrail,
  plan: { resolved: ResolvedSet; tray: DemoTray; people: DemoPeople; now: Date },
): Promise<void> {
  const { people, now } = plan;
  const { beyond } = UNSEEN_EXERCISE;
  if (beyond === undefined) throw new Error("the exercise on unseen stones without its rules");
  const { login, dueH, extraMinutes } = beyond.extension;
  const author = getDemoActor(people, "instructor2");
  const { sectionId } = people;
  const { exerciseId } = await writeDemoExercise(transaction, trail, {
    ...plan,
    exercise: UNSEEN_EXERCISE,
    sectionId,
    author,
  });
  const student = getDemoActor(people, login);
  const grantedAt = new Date(now.getTime() - AN_HOUR_AGO * HOUR_MS);
  await transaction.allowance.create({
    data: {
      exerciseId,
      studentId: student.userId,
      extraMinutes,
      dueAt: new Date(now.getTime() + dueH * HOUR_MS),
      reason: "Away on the day itself.",
      grantedById: author.userId,
      grantedAt,
    },
  });
  const note = { action: "grant-extension", subjectKind: "exercise", subjectId: exerciseId } as const;
  trail.add(grantedAt, author, {
    ...note,
    detail: `${student.name}: a day more, and ${extraMinutes} minutes`,
  });
}

/** Grants a retake on the same stone. */
export async function writeDemoRetake(
  transaction: Transaction,
  trail: DemoTrail,
  plan: { retake: DemoRetake; written: WrittenExercise; people: DemoPeople; author: DemoActor; now: Date },
): Promise<void> {
  const { retake, written, people, author, now } = plan;
  const { login, stone, reason } = retake;
  const place = written.places.get(stone);
  if (place === undefined) throw new Error(`no stone ${stone} for the retake`);
  const student = getDemoActor(people, login);
  const grantedAt = new Date(now.getTime() - RETAKES_AGO * HOUR_MS);
  await transaction.retake.create({
    data: {
      exerciseStoneId: place.exerciseStoneId,
      replacesId: place.exerciseStoneId,
      studentId: student.userId,
      reason,
      grantedById: author.userId,
      grantedAt,
    },
  });
  const note = { action: "grant-retake", subjectKind: "exercise", subjectId: written.exerciseId } as const;
  trail.add(grantedAt, author, { ...note, detail: `${student.name}: ${stone} again` });
}
