/**
 * The command line (design.md): `npm run --silent cli -- COMMAND …` prints JSON on standard output and nothing else.
 * A refusal goes to standard error with exit status 2, and then nothing was written; a fault of the program itself
 * ends with exit status 1.
 */
import { AppError, isAppError } from "@/lib/base/app-error";
import type { Command } from "@/lib/cli/command";
import { readOptions } from "@/lib/cli/read-options";
import { formatJson } from "@/lib/exchange/format-json";

const REFUSED = 2;
const FAILED = 1;

/** Each command is loaded when it is asked for, so that the pure ones need no database. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  score: async () => (await import("@/lib/cli/score")).SCORE,
  facets: async () => (await import("@/lib/cli/facets")).FACETS,
  echoes: async () => (await import("@/lib/cli/echoes")).ECHOES,
  agreement: async () => (await import("@/lib/cli/agreement")).AGREEMENT,
  report: async () => (await import("@/lib/cli/report")).REPORT,
};

function toUsage({ name, purpose, options }: Command): string {
  const words = options.map(({ name: option, value, required }) =>
    required ? `--${option} ${value}` : `[--${option} ${value}]`,
  );
  return `  ${[name, ...words].join(" ")}\n      ${purpose}`;
}

async function describeUsage(): Promise<string> {
  const commands = await Promise.all(Object.values(COMMANDS).map((load) => load()));
  return `Usage: npm run --silent cli -- COMMAND …\n${commands.map(toUsage).join("\n")}\n`;
}

async function loadCommand(name: string | undefined): Promise<Command> {
  const load = name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (load !== undefined) return load();
  const known = Object.keys(COMMANDS).join(", ");
  throw new AppError("bad-input", name === undefined ? "No command is named." : "There is no such command.", [
    { path: name ?? "", message: `the commands are ${known}; --help says more` },
  ]);
}

function toRefusal({ message, faults }: AppError): string {
  const lines = faults.map((fault) => `  ${fault.path === "" ? "" : `${fault.path}: `}${fault.message}`);
  return `${[message, ...lines].join("\n")}\n`;
}

/** Writes to a stream and waits until it is taken; a reader that has gone away is no fault of ours. */
function write(stream: NodeJS.WriteStream, text: string): Promise<void> {
  return new Promise((done, fail) => {
    stream.once("error", (error) => ("code" in error && error.code === "EPIPE" ? done() : fail(error)));
    stream.write(text, () => done());
  });
}

async function main([name, ...args]: readonly string[]): Promise<number> {
  if (name === "--help" || name === "help") {
    await write(process.stderr, await describeUsage());
    return 0;
  }
  try {
    const command = await loadCommand(name);
    const printed = formatJson(await command.run(readOptions(command, args)));
    await write(process.stdout, printed);
    return 0;
  } catch (thrown) {
    if (isAppError(thrown)) {
      await write(process.stderr, toRefusal(thrown));
      return REFUSED;
    }
    await write(
      process.stderr,
      `The program failed: ${thrown instanceof Error ? thrown.stack : String(thrown)}\n`,
    );
    return FAILED;
  }
}

process.exitCode = await main(process.argv.slice(2));
