/** The name of a tab or device that writes a sitting: opaque, made at random by the browser. */
import { z } from "zod";

export const WriterIdSchema = z
  .string()
  .min(8)
  .max(64)
  .regex(/^[A-Za-z0-9_-]+$/, "may hold letters, digits, - and _");
