import { parseArgs } from "node:util";
import { AppError, type Fault } from "@/lib/base/app-error";
import type { Command, OptionValues } from "@/lib/cli/command";

/**
 * The options of a command from its arguments. Throws AppError `bad-input` for an unknown, repeated or missing option,
 * one without a value, and anything that is no option; the path of a fault is the option.
 */
export function readOptions(command: Command, args: readonly string[]): OptionValues {
  const { tokens } = parseArgs({
    args: [...args],
    options: Object.fromEntries(
      command.options.map(({ name, value }) => [
        name,
        { type: value === null ? ("boolean" as const) : ("string" as const) },
      ]),
    ),
    strict: false,
    tokens: true,
  });
  const known = new Set(command.options.map(({ name }) => name));
  const switches = new Set(command.options.filter(({ value }) => value === null).map(({ name }) => name));
  const values: Record<string, string> = {};
  const faults: Fault[] = [];
  for (const token of tokens) {
    if (token.kind === "positional") {
      faults.push({ path: token.value, message: "is no option of this command" });
    } else if (token.kind === "option") {
      const { name, rawName: path, value } = token;
      if (!known.has(name)) faults.push({ path, message: "is no option of this command" });
      else if (switches.has(name) && value !== undefined) faults.push({ path, message: "takes no value" });
      else if (switches.has(name)) values[name] = "yes";
      else if (value === undefined || value === "") faults.push({ path, message: "needs a value" });
      else if (name in values) faults.push({ path, message: "is given twice" });
      else values[name] = value;
    }
  }
  for (const { name, required } of command.options) {
    const isMentioned = tokens.some((token) => token.kind === "option" && token.name === name);
    if (required && !isMentioned) faults.push({ path: `--${name}`, message: "is missing" });
  }
  if (faults.length > 0) throw new AppError("bad-input", `\`${command.name}\` was not run.`, faults);
  return values;
}

/** An option that `readOptions` has made sure of; throws RangeError where the command does not require it. */
export function getOption(values: OptionValues, name: string): string {
  const value = values[name];
  if (value === undefined) throw new RangeError(`getOption: --${name} is not given`);
  return value;
}
