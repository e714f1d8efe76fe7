import type { Transaction } from "@/lib/data/store/database";
import { DEMO_ACCOUNTS, type DemoAccount } from "@/lib/demo/demo-accounts";
import type { DemoActor, DemoTrail } from "@/lib/workflows/demo/demo-trail";

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** The people and sections of the demo, by sign-in name and by what they are for. */
export interface DemoPeople {
  readonly actors: ReadonlyMap<string, DemoActor>;
  /** Everybody is in it. */
  readonly sectionId: string;
  readonly studentLogins: readonly string[];
}

/** Somebody of the cast; throws RangeError for a sign-in name that is not in it (a fault of the program). */
export function getDemoActor({ actors }: Pick<DemoPeople, "actors">, login: string): DemoActor {
  const actor = actors.get(login);
  if (actor === undefined) throw new RangeError(`getDemoActor: nobody is called ${login}`);
  return actor;
}

const EVENING_STUDENTS = ["student1", "student5", "student8", "student11"];

/** What the term of a day is called. */
export function toTerm(now: Date): string {
  return `${now.getMonth() < 6 ? "Spring" : "Autumn"} ${now.getFullYear()}`;
}

async function writeAccounts(
  transaction: Transaction,
  passwordHash: string,
  createdAt: Date,
): Promise<Map<string, DemoActor>> {
  const actors = new Map<string, DemoActor>();
  for (const { login, name, role } of DEMO_ACCOUNTS) {
    const { id } = await transaction.user.create({ data: { login, name, role, passwordHash, createdAt } });
    actors.set(login, { userId: id, name });
  }
  return actors;
}

interface SectionPlan {
  readonly name: string;
  readonly instructors: readonly string[];
  readonly students: readonly string[];
}

/** The first account, the director's, is made by nobody else; the rest by the director. Two sections, taught and filled. */
export async function writeDemoPeople(
  transaction: Transaction,
  trail: DemoTrail,
  passwordHash: string,
  now: Date,
): Promise<DemoPeople> {
  const createdAt = new Date(now.getTime() - 60 * DAY_MS);
  const actors = await writeAccounts(transaction, passwordHash, createdAt);
  const get = (login: string) => getDemoActor({ actors }, login);
  const director = get("director");
  DEMO_ACCOUNTS.forEach(({ login, role }: DemoAccount, index) => {
    const detail = role === "director" ? "the first director" : role;
    const at = new Date(createdAt.getTime() + index * MINUTE_MS);
    trail.add(at, director, {
      action: "create-person",
      subjectKind: "person",
      subjectId: get(login).userId,
      detail,
    });
  });
  const studentLogins = DEMO_ACCOUNTS.filter(({ role }) => role === "student").map(({ login }) => login);
  const openSection = async ({ name, instructors, students }: SectionPlan) => {
    const at = new Date(createdAt.getTime() + DAY_MS);
    const term = toTerm(now);
    const section = await transaction.section.create({
      data: {
        name,
        term,
        createdAt: at,
        instructors: { create: instructors.map((login) => ({ instructorId: get(login).userId })) },
        enrolments: {
          create: students.map((login) => ({ studentId: get(login).userId, enrolledAt: at })),
        },
      },
    });
    const subject = { subjectKind: "section", subjectId: section.id };
    trail.add(at, director, { action: "create-section", ...subject, detail: `${name}, ${term}` });
    for (const login of students) {
      trail.add(at, director, { action: "enrol-student", ...subject, detail: `person ${get(login).userId}` });
    }
    return section.id;
  };
  const sectionId = await openSection({
    name: "Clarity plotting, day class",
    instructors: ["instructor", "instructor2"],
    students: studentLogins,
  });
  await openSection({
    name: "Evening practice",
    instructors: ["instructor2"],
    students: EVENING_STUDENTS,
  });
  return { actors, sectionId, studentLogins };
}
