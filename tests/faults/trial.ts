/**
 * The real server on a database of its own, with a class of students who each have a sitting: what every fault is
 * tried on. Loopback only; the database lies in the machine's folder for temporary files, or where it is asked for.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { encode } from "next-auth/jwt";
import { ensureBuilt, ROOT } from "@/lib/cli/set-up.mjs";
import { closeDatabase, getDatabase } from "@/lib/data/store/database";
import { openSitting } from "@/lib/workflows/open-sitting";
import { createTestDatabase, keepSnapshot } from "@/tests/support/database";
import { buildSchool, makePerson } from "@/tests/support/school";

const NEXT = join(ROOT, "node_modules/next/dist/bin/next");
const SECRET = "fault-trials-only-0123456789abcdef0123456789abcdef";

export interface Plotter {
  readonly sittingId: string;
  readonly cookie: string;
}

export interface Trial {
  readonly address: string;
  readonly file: string;
  readonly plotters: readonly Plotter[];
  start(): Promise<ChildProcess>;
  remove(): Promise<void>;
}

async function seat(students: number): Promise<Plotter[]> {
  const school = await buildSchool();
  const plotters: Plotter[] = [];
  for (let i = 0; i < students; i += 1) {
    const person = await makePerson(`plotter-${i}`, `Plotter ${i}`, "student");
    await getDatabase().enrolment.create({
      data: { sectionId: school.sectionId, studentId: person.userId },
    });
    const [exerciseStoneId] = school.exerciseStoneIds;
    const { sittingId } = await openSitting(person, { exerciseStoneId });
    const token = await encode({ token: { sub: person.userId, epoch: 1 }, secret: SECRET });
    plotters.push({ sittingId, cookie: `loupework-session=${token}` });
  }
  return plotters;
}

async function startServer(address: string, port: number, url: string): Promise<ChildProcess> {
  const other = await fetch(`${address}/sign-in`, { redirect: "manual" }).catch(() => null);
  if (other !== null) throw new Error(`something else answers at ${address}: set PORT to one that is free`);
  const child = spawn(process.execPath, [NEXT, "start", "-p", String(port), "-H", "127.0.0.1"], {
    cwd: ROOT,
    stdio: ["ignore", "ignore", "pipe"],
    env: {
      ...process.env,
      NODE_ENV: "production",
      DATABASE_URL: url,
      LOUPEWORK_SECRET: SECRET,
      LOUPEWORK_URL: address,
      NEXT_TELEMETRY_DISABLED: "1",
    },
  });
  let said = "";
  child.stderr?.on("data", (chunk: Buffer) => {
    said = `${said}${chunk.toString()}`.slice(-2000);
  });
  for (let tries = 0; tries < 400 && child.exitCode === null; tries += 1) {
    const answer = await fetch(`${address}/sign-in`, { redirect: "manual" }).catch(() => null);
    if (answer !== null && answer.status < 500) return child;
    await wait(100);
  }
  child.kill("SIGKILL");
  throw new Error(`the server did not answer; it said: ${said}`);
}

/** Makes the database, in `folder` if one is given, and seats the students. The server is not started yet. */
export async function makeTrial(students: number, port: number, folder?: string): Promise<Trial> {
  // For a second trial of the same build while files are being changed.
  if (process.env.LOUPEWORK_FAULTS_REUSE !== "1") ensureBuilt();
  process.env.LOUPEWORK_SECRET = SECRET;
  const template = await createTestDatabase();
  const plotters = await seat(students);
  const snapshot = await keepSnapshot(template);
  const place = folder ?? mkdtempSync(join(tmpdir(), "loupework-faults-"));
  const file = join(place, "trial.db");
  copyFileSync(snapshot, file);
  await template.remove();
  process.env.DATABASE_URL = `file:${file}`;
  const address = `http://127.0.0.1:${port}`;
  return {
    address,
    file,
    plotters,
    start: () => startServer(address, port, `file:${file}`),
    remove: async () => {
      await closeDatabase();
      if (folder === undefined) rmSync(place, { recursive: true, force: true });
    },
  };
}

/** Ends a server that this process started, at once, and waits until it is gone. */
export async function endServer(child: ChildProcess, signal: "SIGKILL" | "SIGTERM"): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = new Promise((resolve) => child.once("exit", resolve));
  child.kill(signal);
  await ended;
}
