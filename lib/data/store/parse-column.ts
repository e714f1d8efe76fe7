import type { z } from "zod";

/**
 * The value of a JSON column by the schema that owns it. Throws an Error that names the column and the place of each
 * fault, but none of the values: what is in a column is not for a log.
 */
export function parseColumn<S extends z.ZodType>(schema: S, value: unknown, column: string): z.output<S> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  const faults = parsed.error.issues.map(({ path, code }) => `${path.join(".") || "(whole)"} ${code}`);
  throw new Error(`the column ${column} does not hold what its schema says: ${faults.join(", ")}`);
}
