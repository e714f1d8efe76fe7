/**
 * `npm run load`: the real production server on loopback, on a database of its own, with a class of students who plot
 * all at once and several people who watch. Measured is how long a save takes until the watch shows it. It stops by
 * itself and leaves nothing running; figures are for reading and are printed as JSON at the end.
 *
 *   npm run load -- [students] [seconds] [watchers]
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { monitorEventLoopDelay } from "node:perf_hooks";
import { setTimeout as wait } from "node:timers/promises";
import { pathToFileURL } from "node:url";
import { applyMigrations } from "@/lib/data/apply-migrations";
import { closeDatabase } from "@/lib/data/store/database";
import { WatchChangeSchema, WatchSchema } from "@/lib/plot/watch-view";
import { LoadBench, type SentBatch } from "@/tests/load/load-bench";
import { type LoadClass, makeClass } from "@/tests/load/make-class";
import { toSpread } from "@/tests/load/measure";
import { WebClient } from "@/tests/load/web-client";
import { ensureBuilt, ensureGenerated, ROOT, startServer } from "../../lib/cli/set-up.mjs";

const [STUDENTS = 200, SECONDS = 60, WATCHERS = 6] = process.argv.slice(2).map(Number);
const SECTIONS = 4;
const PORT = 4391;
/** Whatever happens, it is over by then, ms. */
const LONGEST_MS = 8 * 60_000;
const WINDOW_MS = 10_000;
const SIGN_INS_AT_ONCE = 4;
const STOP_PATIENCE_MS = 10_000;

const say = (line: string) => console.error(`· ${line}`);
type Server = Awaited<ReturnType<typeof startServer>>;

/** What one watcher has heard, by sitting: how far, and when it first heard of a burst. */
interface Watching {
  readonly login: string;
  readonly heard: Map<string, { lastSeq: number; isDotting: boolean; atMs: number }[]>;
  readonly bytes: { count: number };
  readonly stop: () => void;
}

async function watch(client: WebClient, login: string): Promise<Watching> {
  const heard: Watching["heard"] = new Map();
  const bytes = { count: 0 };
  const take = (rows: readonly { sittingId: string; lastSeq: number; dotting: unknown }[]) => {
    const atMs = performance.now();
    for (const { sittingId, lastSeq, dotting } of rows) {
      const list = heard.get(sittingId) ?? [];
      list.push({ lastSeq, isDotting: dotting !== null, atMs });
      heard.set(sittingId, list);
    }
  };
  const stop = await client.listen(
    "/api/watch/stream",
    (name, data) => {
      bytes.count += data.length;
      if (name === "whole") take(WatchSchema.parse(JSON.parse(data)).rows);
      if (name === "change") take(WatchChangeSchema.parse(JSON.parse(data)).put);
    },
    () => {},
  );
  return { login, heard, bytes, stop };
}

async function inTurns<T>(items: readonly T[], atOnce: number, work: (item: T) => Promise<void>) {
  const left = [...items];
  const turn = async () => {
    for (let item = left.shift(); item !== undefined; item = left.shift()) await work(item);
  };
  await Promise.all(Array.from({ length: atOnce }, turn));
}

async function signInAll(made: LoadClass, logins: readonly string[]): Promise<Map<string, WebClient>> {
  const clients = new Map<string, WebClient>();
  await inTurns(logins, SIGN_INS_AT_ONCE, async (login) => {
    const client = new WebClient(PORT);
    await client.signIn(login, made.password);
    clients.set(login, client);
  });
  return clients;
}

const getClient = (clients: ReadonlyMap<string, WebClient>, login: string): WebClient => {
  const client = clients.get(login);
  if (client === undefined) throw new Error(`${login} is not signed in`);
  return client;
};

/** From each batch to the moment when each watcher who may see it first did, ms. */
function measureDelays(batches: readonly SentBatch[], watchings: readonly Watching[]) {
  const fromSent: number[] = [];
  const fromAck: number[] = [];
  const dotting: number[] = [];
  let unseen = 0;
  for (const { heard } of watchings) {
    for (const batch of batches) {
      const list = heard.get(batch.sittingId);
      if (list === undefined) continue;
      const first = list.find(({ lastSeq }) => lastSeq >= batch.lastSeq);
      if (first === undefined || batch.ackMs === null) {
        unseen += 1;
        continue;
      }
      fromSent.push(first.atMs - batch.sentMs);
      fromAck.push(first.atMs - batch.ackMs);
      if (!batch.isBurst) continue;
      const told = list.find(({ lastSeq, isDotting }) => lastSeq >= batch.lastSeq && isDotting);
      if (told === undefined) unseen += 1;
      else dotting.push(told.atMs - batch.sentMs);
    }
  }
  return { fromSent: toSpread(fromSent), fromAck: toSpread(fromAck), dotting: toSpread(dotting), unseen };
}

/** Asks the server to stop while streams are open, ms until it did; kills it when it does not. */
async function stopServer(server: Server): Promise<number | null> {
  const begun = performance.now();
  const ended = new Promise<true>((resolve) => server.once("exit", () => resolve(true)));
  server.kill("SIGTERM");
  if (await Promise.race([ended, wait(STOP_PATIENCE_MS, false)])) return performance.now() - begun;
  server.kill("SIGKILL");
  return null;
}

/** What the server last wrote of itself (loop-delay.mjs). */
interface LoopFigures {
  readonly cpuSeconds: number;
}

function readLoop(folder: string): LoopFigures | null {
  const files = readdirSync(folder).filter((name) => name.startsWith("loop."));
  const all = files.map((name): LoopFigures => JSON.parse(readFileSync(join(folder, name), "utf8")));
  return all.sort((a, b) => b.cpuSeconds - a.cpuSeconds)[0] ?? null;
}

async function plotAll(made: LoadClass, folder: string) {
  const watcherLogins = Array.from(
    { length: WATCHERS },
    (_, index) => made.watchers[index % made.watchers.length] ?? "",
  );
  const signInMs = performance.now();
  const clients = await signInAll(made, [
    ...new Set(watcherLogins),
    ...made.benches.map(({ login }) => login),
  ]);
  say(`${clients.size} signed in, ${((performance.now() - signInMs) / 1000).toFixed(1)} s`);
  const batches: SentBatch[] = [];
  const benches = made.benches.map(
    ({ login, sittingId }) =>
      new LoadBench(getClient(clients, login), sittingId, (batch) => batches.push(batch)),
  );
  await inTurns(benches, 8, (bench) => bench.open());
  const watchings = await Promise.all(watcherLogins.map((login) => watch(getClient(clients, login), login)));
  say(`${benches.length} benches open, ${watchings.length} watch; plotting for ${SECONDS} s`);
  const startMs = performance.now();
  const cpuBefore = readLoop(folder)?.cpuSeconds ?? 0;
  const ownLoop = monitorEventLoopDelay({ resolution: 10 });
  ownLoop.enable();
  await Promise.all(benches.map((bench) => bench.plotUntil(performance.now() + SECONDS * 1000)));
  const cpuSeconds = (readLoop(folder)?.cpuSeconds ?? 0) - cpuBefore;
  await wait(3000);
  const director = getClient(clients, watcherLogins[0] ?? "");
  const { rows } = WatchSchema.parse(JSON.parse((await director.get("/api/watch")).text));
  const kept = new Map(rows.map(({ sittingId, lastSeq }) => [sittingId, lastSeq]));
  const saves = batches.flatMap(({ sentMs, ackMs }) => (ackMs === null ? [] : [ackMs - sentMs]));
  return {
    clients,
    benches,
    watchings,
    report: {
      students: benches.length,
      watchers: watchings.length,
      seconds: SECONDS,
      events: benches.reduce((sum, { events }) => sum + events, 0),
      saves: toSpread(saves),
      savesPerSecond: saves.length / SECONDS,
      /** All that the server did meanwhile, streams and presence too, over the saves. */
      serverCpuMsPerSave: (1000 * cpuSeconds) / saves.length,
      delay: measureDelays(batches, watchings),
      /** From sent to shown, by when it was sent: all begin at once, on a server that has just started. */
      fromSentByWindow: Array.from({ length: Math.ceil((1000 * SECONDS) / WINDOW_MS) }, (_, window) => {
        const isIn = ({ sentMs }: SentBatch) => Math.floor((sentMs - startMs) / WINDOW_MS) === window;
        return measureDelays(batches.filter(isIn), watchings).fromSent;
      }),
      errors: benches.reduce((sum, { errors }) => sum + errors, 0),
      acknowledgedAndNotKept: benches.filter(
        ({ sittingId, acknowledged }) => (kept.get(sittingId) ?? -1) < acknowledged,
      ).length,
      kilobytesPerWatcherPerSecond: watchings.map(({ bytes }) => Math.round(bytes.count / SECONDS / 1000)),
      loadScriptLoopMs: { p99: ownLoop.percentile(99) / 1e6, max: ownLoop.max / 1e6 },
      serverLoop: readLoop(folder),
    },
  };
}

async function main(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "loupework-load-"));
  const env = {
    DATABASE_URL: `file:${join(folder, "load.db")}`,
    LOUPEWORK_SECRET: "load script only 0123456789abcdef0123456789abcdef",
    LOUPEWORK_URL: `http://127.0.0.1:${PORT}`,
    NEXTAUTH_URL: `http://127.0.0.1:${PORT}`,
    PORT: String(PORT),
    HOST: "127.0.0.1",
    LOUPEWORK_LOOP_FILE: join(folder, "loop"),
  };
  Object.assign(process.env, env);
  ensureGenerated();
  ensureBuilt();
  await applyMigrations(env.DATABASE_URL, join(ROOT, "prisma/migrations"));
  const made = await makeClass(STUDENTS, SECTIONS);
  await closeDatabase();
  const preload = pathToFileURL(join(import.meta.dirname, "loop-delay.mjs")).href;
  const server = await startServer({ ...env, NODE_OPTIONS: `--import ${preload}` });
  const guard = setTimeout(() => {
    server.kill("SIGKILL");
    console.error("It took too long and was stopped.");
    process.exit(1);
  }, LONGEST_MS);
  try {
    const { report, watchings, benches } = await plotAll(made, folder);
    const stopMs = await stopServer(server);
    for (const one of watchings) one.stop();
    for (const bench of benches) bench.close();
    const machine = { cores: cpus().length, processor: cpus()[0]?.model ?? "unknown", node: process.version };
    console.log(JSON.stringify({ machine, ...report, stopWithStreamsOpenMs: stopMs }, null, 2));
  } finally {
    clearTimeout(guard);
    server.kill("SIGKILL");
    rmSync(folder, { recursive: true, force: true });
  }
}

await main();
process.exit(0);
