/** The options that were given, by name without dashes. */
export type OptionValues = Readonly<Record<string, string>>;

/** An option of a command. */
export interface OptionRule {
  readonly name: string;
  /** What stands for the value in the usage line; null for a switch, which takes none and is `yes` where it is given. */
  readonly value: string | null;
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
