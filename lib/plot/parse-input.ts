import type { z } from "zod";
import { AppError } from "@/lib/base/app-error";
import { toFaults } from "@/lib/plot/to-faults";

/** What somebody asks for, by the schema of what may be asked. Throws AppError `bad-input` with the path to each fault. */
export function parseInput<S extends z.ZodType>(schema: S, input: unknown): z.output<S> {
  const parsed = schema.safeParse(input);
  if (parsed.success) return parsed.data;
  throw new AppError("bad-input", "Some of what was sent cannot be taken as it is.", toFaults(parsed.error));
}
