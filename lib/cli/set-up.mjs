/**
 * The steps of setting up that run before anything is installed: only Node's own modules here. Each step leaves a
 * stamp of what it was made from, so that a second start skips what is already done.
 */
import { spawn, spawnSync } from "node:child_process";
import { createHash, randomBytes } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
const NEXT = join(ROOT, "node_modules/next/dist/bin/next");
const TSX = join(ROOT, "node_modules/tsx/dist/cli.mjs");

/** Says a line of progress. */
export function say(line) {
  console.log(`· ${line}`);
}

/** Runs a command in the project's folder and shows what it prints; throws when it fails. */
export function run(command, args, env = {}) {
  const ended = spawnSync(command, args, { cwd: ROOT, stdio: "inherit", env: { ...process.env, ...env } });
  if (ended.error) throw ended.error;
  if (ended.status !== 0)
    throw new Error(`${[command, ...args].join(" ")} ended with status ${ended.status}`);
}

/** Runs a TypeScript file of the project on the server's side of things. */
export function runTypeScript(file, args = [], env = {}) {
  run(process.execPath, [TSX, "--conditions=react-server", file, ...args], env);
}

function listFiles(path) {
  const full = join(ROOT, path);
  if (!existsSync(full)) return [];
  if (statSync(full).isFile()) return [path];
  return readdirSync(full, { withFileTypes: true })
    .filter((entry) => entry.name !== "generated" && entry.name !== "node_modules")
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => listFiles(join(path, entry.name)));
}

/** One hash over the names and contents of files and folders; what is missing counts as empty. */
export function hashOf(paths) {
  const hash = createHash("sha256").update(process.version);
  for (const file of paths.flatMap(listFiles))
    hash
      .update(file)
      .update("\0")
      .update(readFileSync(join(ROOT, file)));
  return hash.digest("hex");
}

/** Does a step unless its stamp says that it was done from the same files and its product is there. */
function once({ name, stamp, from, product, work }) {
  const file = join(ROOT, stamp);
  const hash = hashOf(from);
  if (existsSync(join(ROOT, product)) && existsSync(file) && readFileSync(file, "utf8") === hash)
    return false;
  say(name);
  rmSync(file, { force: true });
  work();
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, hash);
  return true;
}

/** Refuses a Node that is too old, with a sentence. */
export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  if (major < 20 || (major === 20 && minor < 9)) {
    throw new Error(`Loupework needs Node 20.9 or newer; this is ${process.versions.node}.`);
  }
}

/** Installs the packages of the lock file. */
export function ensureInstalled() {
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  return once({
    name: "Installing packages (once, about a minute)",
    stamp: "node_modules/.cache/loupework/installed",
    from: ["package.json", "package-lock.json"],
    product: "node_modules/next/package.json",
    work: () => run(npm, ["ci", "--no-audit", "--no-fund", "--loglevel=error"], { NODE_ENV: "development" }),
  });
}

/** Generates the database client. Generating needs no engine, only the path of some file in its place. */
export function ensureGenerated() {
  return once({
    name: "Generating the database client",
    stamp: "node_modules/.cache/loupework/generated",
    from: ["package-lock.json", "prisma", "prisma.config.ts"],
    product: "prisma/generated",
    work: () =>
      run(process.execPath, [join(ROOT, "node_modules/prisma/build/index.js"), "generate", "--no-hints"], {
        PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
        PRISMA_HIDE_UPDATE_MESSAGE: "1",
      }),
  });
}

/** Builds the program for production into `buildDir`. */
export function ensureBuilt(buildDir = ".next") {
  return once({
    name: "Building (once after every change, about half a minute)",
    stamp: `${buildDir}/loupework-stamp`,
    from: [
      "package-lock.json",
      "next.config.js",
      "instrumentation.ts",
      "proxy.ts",
      "app",
      "components",
      "lib",
      "prisma",
    ],
    product: `${buildDir}/BUILD_ID`,
    work: () =>
      run(process.execPath, [NEXT, "build"], { NEXT_TELEMETRY_DISABLED: "1", LOUPEWORK_BUILD_DIR: buildDir }),
  });
}

/**
 * The environment of a trial on one machine: what is set already stays; a secret is made once and kept beside the
 * database, readable by its owner alone.
 */
export function getTrialEnvironment(dataDir = "data") {
  const folder = join(ROOT, dataDir);
  mkdirSync(folder, { recursive: true });
  const secretFile = join(folder, "trial-secret");
  if (!process.env.LOUPEWORK_SECRET && !existsSync(secretFile)) {
    writeFileSync(secretFile, randomBytes(32).toString("hex"), { mode: 0o600 });
  }
  const port = process.env.PORT ?? "3000";
  const host = process.env.HOST ?? "127.0.0.1";
  return {
    LOUPEWORK_TRIAL: "1",
    LOUPEWORK_SECRET: process.env.LOUPEWORK_SECRET ?? readFileSync(secretFile, "utf8"),
    DATABASE_URL: process.env.DATABASE_URL ?? `file:${join(folder, "loupework.db")}`,
    LOUPEWORK_URL: process.env.LOUPEWORK_URL ?? `http://${host}:${port}`,
    NEXT_TELEMETRY_DISABLED: "1",
    PORT: port,
    HOST: host,
  };
}

/**
 * A connection is kept open for so long between two requests, ms. A bench saves every few seconds, and a busy server takes up one
 * new connection a turn: where each save needs one, they queue for seconds behind those whose connection stands.
 */
const KEEP_ALIVE_MS = 75_000;

/** Starts the built server; resolves with the child once it answers. */
export async function startServer(env, buildDir = ".next") {
  const options = ["-p", env.PORT, "-H", env.HOST, "--keepAliveTimeout", String(KEEP_ALIVE_MS)];
  const child = spawn(process.execPath, [NEXT, "start", ...options], {
    cwd: ROOT,
    stdio: ["ignore", "ignore", "inherit"],
    env: { ...process.env, ...env, NODE_ENV: "production", LOUPEWORK_BUILD_DIR: buildDir },
  });
  let ended = false;
  child.on("exit", () => {
    ended = true;
  });
  for (let tries = 0; tries < 240; tries += 1) {
    if (ended) throw new Error("The server ended before it answered; what it printed stands above.");
    try {
      const answer = await fetch(`http://${env.HOST}:${env.PORT}/sign-in`, { redirect: "manual" });
      if (answer.status < 500) return child;
    } catch {
      // not up yet
    }
    await new Promise((done) => setTimeout(done, 250));
  }
  child.kill("SIGTERM");
  throw new Error("The server did not answer within a minute.");
}
