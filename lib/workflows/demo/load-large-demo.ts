/**
 * Loads the large demo: a program of 40 sections, 1,200 students, 60 stones and 60,000 sittings by simulated students,
 * to see and to measure how the program does at that size. What the students of a section drew is drawn again by lot in
 * the other sections of its cohort, so that 18,000 plots are simulated and scored by the engine, not 60,000. The logs of the
 * sittings are left out, so a debrief has no timeline.
 */
import "server-only";
import { AppError } from "@/lib/base/app-error";
import { hasAnyUser } from "@/lib/data/has-any-user";
import { runInTransaction } from "@/lib/data/store/database";
import { DEMO_PASSWORD } from "@/lib/demo/demo-accounts";
import { LARGE_PROGRAM, planLargeSections } from "@/lib/demo/large-program";
import { type LargeTray, prepareLargeTrays, writeLargeTrays } from "@/lib/workflows/demo/large/large-trays";
import { type PlotPool, simulatePool } from "@/lib/workflows/demo/large/simulate-exercise";
import { writeLargeSection } from "@/lib/workflows/demo/large/write-large-section";
import { hashPassword } from "@/lib/workflows/hash-password";
import { ensureTallySums } from "@/lib/workflows/tally/list-tally-sums";

/** The staff: a director and twenty instructors, who share the sections between them. */
async function writeStaff(passwordHash: string): Promise<string[]> {
  return runInTransaction(async (transaction) => {
    await transaction.user.create({
      data: { login: "director", name: "Thessaly Corrin", role: "director", passwordHash },
    });
    const ids: string[] = [];
    for (let i = 0; i < LARGE_PROGRAM.instructors; i += 1) {
      const login = i === 0 ? "instructor" : `instructor${i + 1}`;
      const { id } = await transaction.user.create({
        data: { login, name: `Instructor ${i + 1}`, role: "instructor", passwordHash },
      });
      ids.push(id);
    }
    return ids;
  });
}

/** The pools of a tray and week, each simulated once; a tray in a week belongs to one cohort. */
function keepPools(trays: readonly LargeTray[]) {
  const pools = new Map<string, PlotPool>();
  return (place: number, week: number): PlotPool => {
    const key = `${place} ${week}`;
    const known = pools.get(key);
    if (known !== undefined) return known;
    const tray = trays[place];
    if (tray === undefined) throw new RangeError(`keepPools: no tray ${place}`);
    const cohort = (place - week + trays.length) % trays.length;
    const made = simulatePool(tray, cohort, week);
    pools.set(key, made);
    return made;
  };
}

/**
 * Fills an empty database, a section a transaction; `share` of the sections (0 to 1), always all stones. `onSection` is
 * told of each. Throws AppError `conflict` where there is anybody already.
 */
export async function loadLargeDemo(
  share: number,
  now: Date,
  onSection: (done: number, of: number) => void = () => undefined,
): Promise<{ sections: number; sittings: number }> {
  if (await hasAnyUser()) {
    throw new AppError("conflict", "This database holds somebody's work; the large demo wants an empty one.");
  }
  const passwordHash = await hashPassword(DEMO_PASSWORD);
  const instructorIds = await writeStaff(passwordHash);
  const trays = prepareLargeTrays();
  const sections = planLargeSections(now, share);
  await runInTransaction((transaction) =>
    writeLargeTrays(transaction, trays, instructorIds[0] ?? "", sections[0]?.startsAt ?? now),
  );
  const getPool = keepPools(trays);
  let sittings = 0;
  for (const [index, section] of sections.entries()) {
    const instructorId = instructorIds[section.instructor] ?? "";
    const written = await runInTransaction((transaction) =>
      writeLargeSection(transaction, section, trays, { instructorId, passwordHash }, getPool),
    );
    await ensureTallySums(written.exerciseIds);
    sittings += written.sittings;
    onSection(index + 1, sections.length);
  }
  return { sections: sections.length, sittings };
}
