/** `npm run up`: sets up everything on a fresh machine and serves it with demo data; later starts skip what is done. */
import {
  ensureBuilt,
  ensureGenerated,
  ensureInstalled,
  getTrialEnvironment,
  requireNode,
  runTypeScript,
  say,
  startServer,
} from "./set-up.mjs";

async function main() {
  requireNode();
  ensureInstalled();
  ensureGenerated();
  const env = getTrialEnvironment();
  runTypeScript("lib/cli/prepare-database.ts", [], env);
  ensureBuilt();
  const server = await startServer(env);
  say(`Loupework is up: ${env.LOUPEWORK_URL}`);
  runTypeScript("lib/cli/print-demo-accounts.ts", [], env);
  say("Stop it with Ctrl+C.");
  for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => server.kill("SIGTERM"));
  server.on("exit", (code) => process.exit(code ?? 0));
}

main().catch((problem) => {
  console.error(`Loupework could not start: ${problem.message}`);
  process.exit(1);
});
