/**
 * Loads the demo: an invented school with its people, trays, references, exercises in different states, one by every rule, one
 * of last term, second readings, and sittings by simulated students (lib/demo) that are scored by the engine itself.
 */
import "server-only";
import { hasAnyUser } from "@/lib/data/has-any-user";
import { runInTransaction, type Transaction } from "@/lib/data/store/database";
import { DEMO_ACCOUNTS, DEMO_PASSWORD } from "@/lib/demo/demo-accounts";
import { DEMO_EXERCISES, DEMO_RETAKES, type DemoExercise } from "@/lib/demo/demo-exercises";
import { planRetakes, planSittings } from "@/lib/demo/plan-sittings";
import type { ResolvedSet } from "@/lib/plot/parse-exercise-set";
import { DemoTrail } from "@/lib/workflows/demo/demo-trail";
import { readDemoSet } from "@/lib/workflows/demo/read-demo-sets";
import { writeDemoExercise } from "@/lib/workflows/demo/write-demo-exercise";
import { preparePastTerm, writeDemoPastTerm } from "@/lib/workflows/demo/write-demo-past-term";
import { type DemoPeople, getDemoActor, writeDemoPeople } from "@/lib/workflows/demo/write-demo-people";
import { writeDemoReadings } from "@/lib/workflows/demo/write-demo-readings";
import {
  releaseDemoSittings,
  type ScoredSitting,
  scoreSittings,
  writeDemoSittings,
} from "@/lib/workflows/demo/write-demo-sittings";
import { type DemoTray, writeDemoTray } from "@/lib/workflows/demo/write-demo-tray";
import { writeDemoRetake, writeDemoUnseen } from "@/lib/workflows/demo/write-demo-unseen";
import { hashPassword } from "@/lib/workflows/hash-password";

const HOUR_MS = 3_600_000;
/** Debriefs are released this long after the exercise closed, hours. */
const RELEASED_AFTER_H = 20;

const TRAY_NAMES: Readonly<Record<DemoExercise["set"], string>> = {
  "first-look": "Tray A, first look",
  "reflections-and-glints": "Tray B, reflections and glints",
  "grade-boundaries": "Tray C, grade boundaries",
};

/** An exercise with everything that can be worked out before the database is touched. */
interface PreparedExercise {
  readonly exercise: DemoExercise;
  readonly resolved: ResolvedSet;
  readonly sittings: readonly ScoredSitting[];
  /** The sign-in name of whoever keeps the tray and sets the exercise. */
  readonly author: string;
}

function prepareExercise(exercise: DemoExercise, now: Date): PreparedExercise {
  const logins = DEMO_ACCOUNTS.filter(({ role }) => role === "student").map(({ login }) => login);
  const { resolved, stones } = readDemoSet(exercise.set, exercise.progress !== null);
  const sittings = scoreSittings(resolved, [
    ...planSittings(exercise, logins, stones, now),
    ...planRetakes(exercise, stones, now),
  ]);
  const author = exercise.set === "grade-boundaries" ? "instructor2" : "instructor";
  return { exercise, resolved, sittings, author };
}

async function writeExercise(
  transaction: Transaction,
  trail: DemoTrail,
  prepared: PreparedExercise,
  people: DemoPeople,
  now: Date,
): Promise<DemoTray> {
  const { exercise, resolved, sittings } = prepared;
  const author = getDemoActor(people, prepared.author);
  const tray = await writeDemoTray(transaction, trail, {
    name: TRAY_NAMES[exercise.set],
    resolved,
    owner: author,
    secondReader: getDemoActor(people, "instructor2"),
    now,
  });
  const { sectionId } = people;
  const written = await writeDemoExercise(transaction, trail, {
    exercise,
    resolved,
    tray,
    sectionId,
    author,
    now,
  });
  for (const retake of DEMO_RETAKES[exercise.set] ?? [])
    await writeDemoRetake(transaction, trail, { retake, written, people, author, now });
  const handedIn = await writeDemoSittings(transaction, trail, sittings, people, written);
  if (!exercise.isReleased) return tray;
  const releasedAt = new Date(now.getTime() + (exercise.closesH + RELEASED_AFTER_H) * HOUR_MS);
  await releaseDemoSittings(transaction, trail, handedIn, author, releasedAt);
  return tray;
}

/** Who of the staff has plotted which stones a second time, and handed in. */
const READINGS: readonly { readonly login: string; readonly labels: readonly string[] }[] = [
  { login: "instructor2", labels: ["A-03", "A-05", "B-01", "B-03"] },
  { login: "instructor", labels: ["D-01", "D-03"] },
];

async function writeReadings(
  transaction: Transaction,
  trail: DemoTrail,
  { resolved, tray }: { resolved: ResolvedSet; tray: DemoTray },
  people: DemoPeople,
  now: Date,
): Promise<void> {
  for (const { login, labels } of READINGS) {
    const own = labels.filter((label) => tray.stones.some((stone) => stone.label === label));
    const reader = getDemoActor(people, login);
    await writeDemoReadings(transaction, trail, { resolved, tray, labels: own, reader, login, now });
  }
}

/** Who has sat at the bench has signed in for it; the instructors a while ago, the director not yet. */
async function noteSignIns(
  transaction: Transaction,
  prepared: readonly PreparedExercise[],
  people: DemoPeople,
  now: Date,
): Promise<void> {
  const last = new Map<string, Date>();
  for (const { sittings } of prepared) {
    for (const { login, openedAt } of sittings) {
      if (openedAt > (last.get(login) ?? new Date(0))) last.set(login, openedAt);
    }
  }
  for (const login of ["instructor", "instructor2"]) last.set(login, new Date(now.getTime() - 3 * HOUR_MS));
  for (const [login, lastSignInAt] of last) {
    const { userId } = getDemoActor(people, login);
    await transaction.user.update({ where: { id: userId }, data: { lastSignInAt } });
  }
}

/**
 * Loads the demo into a database that has no account yet, all or nothing; dates are told from `now`. Its accounts
 * (DEMO_ACCOUNTS) share one password, DEMO_PASSWORD, hashed once. Does nothing where there is an account already.
 * Gives whether it was loaded.
 */
export async function loadDemo(now: Date = new Date()): Promise<boolean> {
  if (await hasAnyUser()) return false;
  const passwordHash = await hashPassword(DEMO_PASSWORD);
  const past = preparePastTerm(now);
  const prepared = DEMO_EXERCISES.map((exercise) => prepareExercise(exercise, now));
  return runInTransaction(async (transaction) => {
    if ((await transaction.user.count()) > 0) return false;
    const trail = new DemoTrail();
    const people = await writeDemoPeople(transaction, trail, passwordHash, now);
    for (const one of prepared) {
      const tray = await writeExercise(transaction, trail, one, people, now);
      await writeReadings(transaction, trail, { ...one, tray }, people, now);
    }
    const tray = await writeDemoPastTerm(transaction, trail, past, people, now);
    await writeReadings(transaction, trail, { ...past, tray }, people, now);
    await writeDemoUnseen(transaction, trail, { resolved: past.resolved, tray, people, now });
    await noteSignIns(transaction, prepared, people, now);
    await trail.write(transaction);
    return true;
  });
}
