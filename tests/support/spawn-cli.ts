import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** Runs the command line as `npm run --silent cli -- …` does and gives what it said. */
export function spawnCli(...args: readonly string[]): {
  status: number | null;
  stdout: string;
  stderr: string;
} {
  const tsx = `${ROOT}node_modules/tsx/dist/cli.mjs`;
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [tsx, "--conditions=react-server", "lib/cli/main.ts", ...args],
    {
      cwd: ROOT,
      encoding: "utf8",
      maxBuffer: 64 * 1024 * 1024,
    },
  );
  return { status, stdout, stderr };
}
