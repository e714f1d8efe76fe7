/** Serves a fresh demo on a database of its own for the browser tests; stops when its parent does. */
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import {
  ensureBuilt,
  ensureGenerated,
  getTrialEnvironment,
  runTypeScript,
  startServer,
} from "../../lib/cli/set-up.mjs";

const folder = mkdtempSync(join(tmpdir(), "loupework-browser-"));
process.env.DATABASE_URL = `file:${join(folder, "demo.db")}`;
process.env.LOUPEWORK_SECRET = "browser-tests-only-0123456789abcdef0123456789abcdef";
ensureGenerated();
ensureBuilt();
const env = getTrialEnvironment(join("node_modules", ".cache", "loupework", "browser"));
runTypeScript("lib/cli/prepare-database.ts", [], env);
const server = await startServer(env);
for (const signal of ["SIGINT", "SIGTERM"]) {
  process.once(signal, () => {
    server.kill("SIGTERM");
    process.exit(0);
  });
}
