/**
 * `npm run check`: sets up a fresh machine, then runs every check and test, and closes with `N passed, N failed`.
 * A check that is not a test runner counts as one; test runners count their tests.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { ensureBuilt, ensureGenerated, ensureInstalled, ROOT, requireNode, say } from "../lib/cli/set-up.mjs";

const bin = (name) => join(ROOT, "node_modules/.bin", name);
const REPORTS = join(ROOT, "test-results");
const VITEST_REPORT = join(REPORTS, "vitest.json");
const BROWSER_REPORT = join(REPORTS, "browser.json");
const SYSTEM_CHROMIUM = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

function attempt(command, args, env = {}) {
  return (
    spawnSync(command, args, { cwd: ROOT, stdio: "inherit", env: { ...process.env, ...env } }).status === 0
  );
}

/** The system's Chromium if there is one, else Playwright's own, else apt's where we are root. */
function ensureBrowser() {
  if (SYSTEM_CHROMIUM.some(existsSync)) return true;
  say("Fetching a browser for the browser tests");
  if (attempt(bin("playwright"), ["install", "chromium"])) return true;
  if (process.getuid?.() !== 0) return false;
  const quiet = { DEBIAN_FRONTEND: "noninteractive" };
  attempt("apt-get", ["update", "-q"], quiet);
  return attempt("apt-get", ["install", "-y", "-q", "chromium"], quiet);
}

function readReport(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : null;
}

function countVitest() {
  const report = readReport(VITEST_REPORT);
  return report === null ? null : { passed: report.numPassedTests, failed: report.numFailedTests };
}

function countBrowser() {
  const stats = readReport(BROWSER_REPORT)?.stats;
  return stats === undefined ? null : { passed: stats.expected, failed: stats.unexpected + stats.flaky };
}

const STEPS = [
  { name: "format and lint", work: () => attempt(bin("biome"), ["ci", "."]) },
  { name: "types", work: () => attempt(bin("next"), ["typegen"]) && attempt(bin("tsc"), ["--noEmit"]) },
  {
    name: "walls",
    work: () =>
      attempt(bin("depcruise"), ["--config", ".dependency-cruiser.mjs", "app", "components", "lib"]),
  },
  { name: "unused code", work: () => attempt(bin("knip"), []) },
  {
    name: "unit, property, golden, access and integration tests",
    work: () =>
      attempt(bin("vitest"), [
        "run",
        "--reporter=default",
        "--reporter=json",
        `--outputFile.json=${VITEST_REPORT}`,
      ]),
    count: countVitest,
  },
  {
    name: "build",
    work: () => {
      ensureBuilt();
      return true;
    },
  },
  { name: "browser tests", work: () => attempt(bin("playwright"), ["test"]), count: countBrowser },
];

function runStep({ name, work, count }) {
  say(name);
  const started = Date.now();
  let good = false;
  try {
    good = work();
  } catch (problem) {
    console.error(problem.message);
  }
  const counted = count?.() ?? null;
  say(`${name}: ${good ? "passed" : "FAILED"} in ${Math.round((Date.now() - started) / 1000)} s`);
  if (counted === null) return { passed: good ? 1 : 0, failed: good ? 0 : 1 };
  // A runner that failed without a failed test (a file that does not load, say) must not look green.
  return { passed: counted.passed, failed: counted.failed + (good || counted.failed > 0 ? 0 : 1) };
}

requireNode();
ensureInstalled();
ensureGenerated();
rmSync(REPORTS, { recursive: true, force: true });
mkdirSync(REPORTS, { recursive: true });
if (!ensureBrowser()) console.error("No browser could be installed: the browser tests will fail.");
const totals = STEPS.map(runStep).reduce((sum, one) => ({
  passed: sum.passed + one.passed,
  failed: sum.failed + one.failed,
}));
console.log(`${totals.passed} passed, ${totals.failed} failed`);
process.exitCode = totals.failed === 0 ? 0 : 1;
