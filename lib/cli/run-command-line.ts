/** What the command line does, without the process round it: arguments in, what is to be printed out. */
import { AppError, isAppError } from "@/lib/base/app-error";
import type { Command } from "@/lib/cli/command";
import { readOptions } from "@/lib/cli/read-options";
import { formatJson } from "@/lib/exchange/format-json";

/** A refusal ends with status 2, a fault of the program itself with 1. */
const REFUSED = 2;
const FAILED = 1;

export interface Outcome {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** Each command is loaded when it is asked for, so that the pure ones need no database. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  score: async () => (await import("@/lib/cli/score")).SCORE,
  facets: async () => (await import("@/lib/cli/facets")).FACETS,
  echoes: async () => (await import("@/lib/cli/echoes")).ECHOES,
  agreement: async () => (await import("@/lib/cli/agreement")).AGREEMENT,
  report: async () => (await import("@/lib/cli/report")).REPORT,
  import: async () => (await import("@/lib/cli/import")).IMPORT,
  export: async () => (await import("@/lib/cli/export")).EXPORT,
  backup: async () => (await import("@/lib/cli/backup")).BACKUP,
  restore: async () => (await import("@/lib/cli/restore")).RESTORE,
};

function toUsage({ name, purpose, options }: Command): string {
  const words = options.map(({ name: option, value, required }) => {
    const word = value === null ? `--${option}` : `--${option} ${value}`;
    return required ? word : `[${word}]`;
  });
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

/** Runs the command that the arguments name. Never throws: what goes wrong is told on standard error. */
export async function runCommandLine([name, ...args]: readonly string[]): Promise<Outcome> {
  try {
    if (name === "--help" || name === "help") return { status: 0, stdout: "", stderr: await describeUsage() };
    const command = await loadCommand(name);
    const printed = await command.run(readOptions(command, args));
    return { status: 0, stdout: formatJson(printed), stderr: "" };
  } catch (thrown) {
    if (isAppError(thrown)) return { status: REFUSED, stdout: "", stderr: toRefusal(thrown) };
    const trace = thrown instanceof Error ? thrown.stack : String(thrown);
    return { status: FAILED, stdout: "", stderr: `The program failed: ${trace}\n` };
  }
}
