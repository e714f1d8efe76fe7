import type { OptionValues } from "@/lib/cli/read-options";

/** An option of a command: always with a value. */
export interface OptionRule {
  readonly name: string;
  /** What stands for the value in the usage line. */
  readonly value: string;
  readonly required: boolean;
}

/** One command of the command line. */
export interface Command {
  readonly name: string;
  readonly purpose: string;
  readonly options: readonly OptionRule[];
  /**
   * Does the work and gives what is printed as JSON. Throws AppError to refuse; then it has written nothing.
   */
  readonly run: (values: OptionValues) => Promise<unknown>;
}
