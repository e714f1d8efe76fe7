/** Last term of the demo: a section that is over, with an exercise on worn stones. */
import type { Transaction } from "@/lib/data/store/database";
import { PAST_ACCOUNTS } from "@/lib/demo/demo-accounts";
import { planSittings } from "@/lib/demo/plan-sittings";
import { getPastSkill, planWornStones, WORN_EXERCISE } from "@/lib/demo/worn-stones";
import { parseExerciseSet, type ResolvedSet } from "@/lib/plot/parse-exercise-set";
import type { DemoTrail } from "@/lib/workflows/demo/demo-trail";
import { readDemoSet, simulateStones } from "@/lib/workflows/demo/read-demo-sets";
import { writeDemoExercise } from "@/lib/workflows/demo/write-demo-exercise";
import { type DemoPeople, getDemoActor, toTerm } from "@/lib/workflows/demo/write-demo-people";
import {
  releaseDemoSittings,
  type ScoredSitting,
  scoreSittings,
  writeDemoSittings,
} from "@/lib/workflows/demo/write-demo-sittings";
import { type DemoTray, writeDemoTray } from "@/lib/workflows/demo/write-demo-tray";

const HOUR_MS = 3_600_000;
const DAY_MS = 86_400_000;
const BEGAN_DAYS = 170;

export interface PastTerm {
  readonly resolved: ResolvedSet;
  readonly sittings: readonly ScoredSitting[];
}

/** Everything that can be worked out before the database is touched. */
export function preparePastTerm(now: Date): PastTerm {
  const { set, early, late } = planWornStones(readDemoSet("first-look", false).resolved.set.stones);
  const resolved = parseExerciseSet(set);
  const logins = PAST_ACCOUNTS.map(({ login }) => login);
  const half = Math.ceil(logins.length / 2);
  const middleH = (WORN_EXERCISE.opensH + WORN_EXERCISE.dueH) / 2;
  const sittings = [
    ...planSittings(
      { ...WORN_EXERCISE, dueH: middleH },
      logins.slice(0, half),
      simulateStones(resolved, early),
      now,
      getPastSkill,
    ),
    ...planSittings(
      { ...WORN_EXERCISE, opensH: middleH },
      logins.slice(half),
      simulateStones(resolved, late),
      now,
      getPastSkill,
    ),
  ];
  return { resolved, sittings: scoreSittings(resolved, sittings) };
}

async function writePeople(transaction: Transaction, trail: DemoTrail, people: DemoPeople, now: Date) {
  const createdAt = new Date(now.getTime() - BEGAN_DAYS * DAY_MS);
  const actors = new Map(people.actors);
  for (const { login, name, role } of PAST_ACCOUNTS) {
    const data = { login, name, role, passwordHash: "-", active: false, createdAt };
    const { id } = await transaction.user.create({ data });
    actors.set(login, { userId: id, name });
  }
  const teacher = getDemoActor(people, "instructor2");
  const term = toTerm(createdAt);
  const name = "Clarity plotting, last term";
  const { id: sectionId } = await transaction.section.create({
    data: {
      name,
      term,
      createdAt,
      instructors: { create: { instructorId: teacher.userId } },
      enrolments: {
        create: PAST_ACCOUNTS.map(({ login }) => ({
          studentId: getDemoActor({ actors }, login).userId,
          enrolledAt: createdAt,
        })),
      },
    },
  });
  trail.add(createdAt, getDemoActor(people, "director"), {
    action: "create-section",
    subjectKind: "section",
    subjectId: sectionId,
    detail: `${name}, ${term}`,
  });
  return { ...people, actors, sectionId };
}

/** Writes last term's section, its tray, its exercise and what was handed in. Gives the tray. */
export async function writeDemoPastTerm(
  transaction: Transaction,
  trail: DemoTrail,
  { resolved, sittings }: PastTerm,
  present: DemoPeople,
  now: Date,
): Promise<DemoTray> {
  const people = await writePeople(transaction, trail, present, now);
  const author = getDemoActor(people, "instructor2");
  const began = new Date(now.getTime() - (BEGAN_DAYS - 45) * DAY_MS);
  const tray = await writeDemoTray(transaction, trail, {
    name: "Tray D, worn stones",
    resolved,
    owner: author,
    secondReader: author,
    now: began,
  });
  const { sectionId } = people;
  const plan = { exercise: WORN_EXERCISE, resolved, tray, sectionId, author, now };
  const written = await writeDemoExercise(transaction, trail, plan);
  const handedIn = await writeDemoSittings(transaction, trail, sittings, people, written);
  const releasedAt = new Date(now.getTime() + (WORN_EXERCISE.closesH + DAY_MS / HOUR_MS) * HOUR_MS);
  await releaseDemoSittings(transaction, trail, handedIn, author, releasedAt);
  return tray;
}
