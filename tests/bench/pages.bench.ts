/**
 * The pages of agreement on the large demo at a quarter, a half and all of its sections: the production build over HTTP,
 * warm, one request after another, by the wall and by the processor time that the server used. Databases are made where they are missing (`npm run demo:large`, minutes) and kept in
 * LOUPEWORK_LARGE (`data/` when not set) as large-25.db, large-50.db and large-100.db; LOUPEWORK_SHARES takes fewer.
 */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { DEMO_PASSWORD } from "@/lib/demo/demo-accounts";
import type { Figure } from "@/tests/bench/run";

const PORT = process.env.PORT ?? "4275";
const ADDRESS = `http://127.0.0.1:${PORT}`;
const ROOT = join(import.meta.dirname, "../..");
const FOLDER = process.env.LOUPEWORK_LARGE ?? join(ROOT, "data");
const SHARES = (process.env.LOUPEWORK_SHARES ?? "25,50,100").split(",").map(Number);
const WARM_UPS = 3;
const TIMES = 21;
const STARTS_WITHIN_MS = 300_000;

function ensureLargeDemo(percent: number): string {
  const file = join(FOLDER, `large-${percent}.db`);
  if (existsSync(file)) return `file:${file}`;
  const env = { ...process.env, DATABASE_URL: `file:${file}` };
  const args = ["--conditions=react-server", "lib/cli/demo-large.ts", String(percent / 100)];
  const tsx = join(ROOT, "node_modules/tsx/dist/cli.mjs");
  const made = spawnSync(process.execPath, [tsx, ...args], { cwd: ROOT, env, stdio: "inherit" });
  if (made.status !== 0) throw new Error("pages: the large demo could not be made");
  return `file:${file}`;
}

async function waitForServer(): Promise<void> {
  const end = Date.now() + STARTS_WITHIN_MS;
  while (Date.now() < end) {
    const answer = await fetch(`${ADDRESS}/sign-in`).catch(() => null);
    if (answer?.ok) return;
    await new Promise((done) => setTimeout(done, 500));
  }
  throw new Error("pages: the server did not start");
}

const readCookies = (answer: Response) =>
  answer.headers.getSetCookie().map((cookie) => cookie.split(";")[0] ?? "");

/** Signs in by the program's own door; gives the cookies of the session. */
async function signIn(login: string): Promise<string> {
  const first = await fetch(`${ADDRESS}/api/auth/csrf`);
  const { csrfToken } = (await first.json()) as { csrfToken: string };
  const answer = await fetch(`${ADDRESS}/api/auth/callback/credentials`, {
    method: "POST",
    headers: { cookie: readCookies(first).join("; ") },
    body: new URLSearchParams({ csrfToken, login, password: DEMO_PASSWORD, json: "true" }),
  });
  if (!answer.ok) throw new Error(`pages: ${login} could not sign in`);
  return [...readCookies(first), ...readCookies(answer)].join("; ");
}

async function get(path: string, cookie: string): Promise<string> {
  const answer = await fetch(`${ADDRESS}${path}`, { headers: { cookie }, redirect: "manual" });
  const text = await answer.text();
  if (answer.status !== 200) throw new Error(`pages: ${path} answered ${answer.status}`);
  return text;
}

async function findHref(path: string, cookie: string, pattern: RegExp): Promise<string> {
  const found = pattern.exec(await get(path, cookie))?.[1];
  if (found === undefined) throw new Error(`pages: ${path} has no link like ${pattern}`);
  return found;
}

/** Of every process now: its parent and the processor time it has used, ms; of none where the system has no /proc. */
function listProcesses(): Map<number, { parent: number; usedMs: number }> {
  if (!existsSync("/proc/self/stat")) return new Map();
  const ids = readdirSync("/proc").filter((name) => /^[0-9]+$/.test(name));
  return new Map(
    ids.flatMap((id) => {
      try {
        // After the name in brackets: state, parent, …; utime and stime are the 12th and 13th, in hundredths of a second.
        const fields = readFileSync(`/proc/${id}/stat`, "utf8").split(") ").at(-1)?.split(" ") ?? [];
        const usedMs = (Number(fields[11]) + Number(fields[12])) * 10;
        return [[Number(id), { parent: Number(fields[1]), usedMs }] as const];
      } catch {
        // It ended meanwhile.
        return [];
      }
    }),
  );
}

/** Processor time used so far by a process and all that it started, ms. */
function readProcessorMs(root: number): number {
  const all = listProcesses();
  const isUnder = (id: number): boolean => id === root || (id > 1 && isUnder(all.get(id)?.parent ?? 0));
  return [...all].reduce((sum, [id, { usedMs }]) => sum + (isUnder(id) ? usedMs : 0), 0);
}

async function time(name: string, path: string, cookie: string, serverId: number): Promise<Figure[]> {
  for (let i = 0; i < WARM_UPS; i += 1) await get(path, cookie);
  const usedBefore = readProcessorMs(serverId);
  const tookMs: number[] = [];
  for (let i = 0; i < TIMES; i += 1) {
    const began = performance.now();
    await get(path, cookie);
    tookMs.push(performance.now() - began);
  }
  const usedMs = (readProcessorMs(serverId) - usedBefore) / TIMES;
  tookMs.sort((a, b) => a - b);
  const p95 = tookMs[Math.ceil(TIMES * 0.95) - 1] ?? 0;
  return [
    {
      name,
      value: tookMs[Math.floor(TIMES / 2)] ?? 0,
      unit: "ms",
      note: `95th percentile ${p95.toFixed(0)} ms, processor ${usedMs.toFixed(0)} ms`,
    },
  ];
}

/** Every page of it: what it is called, who asks, and where it is. */
async function measurePages(percent: number, serverId: number): Promise<Figure[]> {
  const [director, student] = [await signIn("director"), await signIn("large-01-01")];
  const section = await findHref("/sections", director, /href="(\/sections\/[0-9a-f-]{36})"/);
  const one = await findHref(section, director, /value="([0-9a-f-]{36})"/);
  const progress = await findHref(
    section,
    director,
    /href="(\/sections\/[0-9a-f-]{36}\/students\/[0-9a-f-]{36})"/,
  );
  const tray = await findHref("/trays", director, /href="(\/trays\/[0-9a-f-]{36})"/);
  const stone = await findHref(tray, director, /href="(\/trays\/[0-9a-f-]{36}\/stones\/[0-9a-f-]{36})"/);
  const pages: readonly (readonly [name: string, path: string, cookie: string])[] = [
    ["sections", "/sections", director],
    ["program", "/program", director],
    ["a section", section, director],
    ["a section, one exercise", `${section}?exercise=${one}`, director],
    ["a student's progress, to staff", progress, director],
    ["progress, to the student", "/progress", student],
    ["a stone", stone, director],
    ["gradebook.csv", `/api${section}/gradebook.csv`, director],
    ["items.csv", `/api${section}/items.csv`, director],
    ["oneroster.zip", `/api${section}/oneroster.zip`, director],
  ];
  const figures: Figure[] = [];
  for (const [name, path, cookie] of pages) {
    figures.push(...(await time(`${percent} %: ${name}`, path, cookie, serverId)));
  }
  return figures;
}

export default async function measure(): Promise<Figure[]> {
  const script = join(import.meta.dirname, "../support/serve-database.mjs");
  const figures: Figure[] = [];
  for (const percent of SHARES) {
    const env = { ...process.env, PORT, DATABASE_URL: ensureLargeDemo(percent) };
    const server = spawn(process.execPath, [script], { stdio: ["ignore", "ignore", "inherit"], env });
    const ended = new Promise((done) => server.once("exit", done));
    try {
      await waitForServer();
      figures.push(...(await measurePages(percent, server.pid ?? 0)));
    } finally {
      server.kill("SIGTERM");
      await ended;
    }
  }
  return figures;
}
