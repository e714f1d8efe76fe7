/** Serves the database that DATABASE_URL names, built for production, at PORT; stops when its parent does. */
import { join } from "node:path";
import { ensureBuilt, getTrialEnvironment, startServer } from "../../lib/cli/set-up.mjs";

process.env.LOUPEWORK_SECRET = "benchmarks-only-0123456789abcdef0123456789abcdef";
ensureBuilt();
const server = await startServer(getTrialEnvironment(join("node_modules", ".cache", "loupework", "bench")));
for (const signal of ["SIGINT", "SIGTERM"]) {
  process.once(signal, () => {
    server.kill("SIGTERM");
    process.exit(0);
  });
}
