/**
 * The disk fills up under the server: a small file system of its own (Linux, as root) is really filled to the last
 * byte in the middle of the students' saves, and emptied again.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, statfsSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { compareLogs } from "@/tests/faults/compare-logs";
import { createProgress, type Progress, plotUntilStopped } from "@/tests/faults/plot-until-stopped";
import { endServer, makeTrial } from "@/tests/faults/trial";

const STUDENTS = 10;
const ROUNDS = 5;
const SIZE_MB = 24;
const PORT = Number(process.env.PORT ?? 4312);

function mustRun(command: string, args: readonly string[]): void {
  const ended = spawnSync(command, args, { encoding: "utf8" });
  if (ended.status !== 0) throw new Error(`${command} ${args.join(" ")}: ${ended.stderr}`);
}

/** Fills what is left, block by block, so that not one page of the database fits any more. */
function fill(folder: string): void {
  for (let size = 1 << 20, part = 0; size >= 4096; part += 1) {
    try {
      writeFileSync(join(folder, `fill-${part}`), Buffer.alloc(size, 1));
    } catch {
      size >>= 1;
    }
  }
}

function empty(folder: string): void {
  for (let part = 0; part < 4096; part += 1) rmSync(join(folder, `fill-${part}`), { force: true });
}

const sum = (all: readonly Progress[]) => all.reduce((total, { acknowledged }) => total + acknowledged, 0);

async function plotFor(address: string, all: readonly Progress[], ms: number): Promise<void> {
  const untilMs = performance.now() + ms;
  await Promise.all(all.map((one) => plotUntilStopped(address, one, () => performance.now() > untilMs)));
}

async function tryIn(folder: string): Promise<boolean> {
  const trial = await makeTrial(STUDENTS, PORT, folder);
  const all = trial.plotters.map(createProgress);
  const server = await trial.start();
  let isClean = true;
  for (let round = 1; round <= ROUNDS; round += 1) {
    const begun = sum(all);
    const plotting = plotFor(trial.address, all, 60_000);
    for (let tries = 0; tries < 600 && sum(all) < begun + STUDENTS; tries += 1) await wait(100);
    fill(folder);
    await plotting;
    const full = sum(all);
    const freeBytes = statfsSync(folder).bavail * statfsSync(folder).bsize;
    // While it is full every save is refused, again and again, and nothing is acknowledged.
    for (let again = 0; again < 5; again += 1) await plotFor(trial.address, all, 200);
    const isStill = sum(all) === full;
    empty(folder);
    await plotFor(trial.address, all, 500);
    const recovered = sum(all) - full;
    isClean &&= isStill && recovered > 0;
    console.log(
      `full ${round}: ${full - begun} acknowledged until ${freeBytes} bytes were free, ${isStill ? "none" : "SOME"} while full, ${recovered} once there was room`,
    );
  }
  const refusals = new Map<string, number>();
  for (const one of all) {
    for (const [code, count] of one.refusals) refusals.set(code, (refusals.get(code) ?? 0) + count);
  }
  console.log(`refusals: ${[...refusals].map(([code, count]) => `${code} ${count} times`).join(", ")}`);
  await endServer(server, "SIGKILL");
  const { acknowledged, saved, lost, doubled, broken, integrity } = await compareLogs(all);
  console.log(
    `${acknowledged} acknowledged, ${saved} saved, ${lost} lost, ${doubled} doubled, ${broken} sittings broken, integrity ${integrity}`,
  );
  await trial.remove();
  return isClean && lost + doubled + broken === 0 && [...refusals.keys()].join() === "507 no-room";
}

/** Runs the trial; true when nothing was lost, every refusal named its reason, and the saves went on afterwards. */
export async function tryFullDisk(): Promise<boolean> {
  const folder = mkdtempSync(join(tmpdir(), "loupework-small-disk-"));
  mustRun("mount", ["-t", "tmpfs", "-o", `size=${SIZE_MB}m`, "tmpfs", folder]);
  try {
    return await tryIn(folder);
  } finally {
    mustRun("umount", ["--lazy", folder]);
    rmSync(folder, { recursive: true, force: true });
  }
}
