import type { z } from "zod";
import type { Prisma } from "@/prisma/generated/client";

/** A value on its way into a JSON column, parsed by the schema that owns it. Throws ZodError for what does not fit. */
export function toColumn<S extends z.ZodType>(schema: S, value: z.input<S>): Prisma.InputJsonObject {
  return schema.parse(value) as Prisma.InputJsonObject;
}
