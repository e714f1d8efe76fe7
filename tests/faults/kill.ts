/** The server is killed with SIGKILL in the middle of 50 students' saves, again and again. */
import { setTimeout as wait } from "node:timers/promises";
import { createSeededRandom } from "@/lib/base/seeded-random";
import { compareLogs } from "@/tests/faults/compare-logs";
import { createProgress, plotUntilStopped } from "@/tests/faults/plot-until-stopped";
import { endServer, makeTrial } from "@/tests/faults/trial";

const STUDENTS = 50;
const KILLS = 20;
const PORT = Number(process.env.PORT ?? 4312);
/** Killed so long after the saves got going, at most, ms. */
const SPREAD_MS = 2400;

/** Runs all trials; true when nothing was lost, doubled or broken. */
export async function tryKills(): Promise<boolean> {
  const trial = await makeTrial(STUDENTS, PORT);
  const random = createSeededRandom("kills");
  const all = trial.plotters.map(createProgress);
  let isClean = true;
  for (let kill = 1; kill <= KILLS; kill += 1) {
    const before = all.reduce((sum, { acknowledged }) => sum + acknowledged, 0);
    const server = await trial.start();
    const plotting = Promise.all(all.map((one) => plotUntilStopped(trial.address, one, () => false)));
    const sum = () => all.reduce((total, { acknowledged }) => total + acknowledged, 0);
    // A loaded machine is slow to give its first answers: the kill must fall among saves.
    for (let tries = 0; tries < 600 && sum() < before + STUDENTS; tries += 1) await wait(100);
    await wait(SPREAD_MS * random.next());
    await endServer(server, "SIGKILL");
    await plotting;
    const { acknowledged, saved, lost, doubled, broken, integrity } = await compareLogs(all);
    isClean &&= lost + doubled + broken === 0 && integrity === "ok" && acknowledged > before;
    console.log(
      `kill ${kill}: ${acknowledged - before} acknowledged in this life, ${acknowledged} in all; ${saved} saved, ${lost} lost, ${doubled} doubled, ${broken} sittings broken, integrity ${integrity}`,
    );
  }
  await trial.remove();
  return isClean;
}
