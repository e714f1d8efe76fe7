"use server";

import { z } from "zod";
import { toActionResult } from "@/components/forms/action-result";
import { createFirstDirector } from "@/lib/workflows/create-first-director";

const InputSchema = z.strictObject({ name: z.string(), login: z.string(), password: z.string() });

/** Makes the director's account of a program that has no user; the workflow refuses any other time. */
export async function createFirstDirectorAction(input: unknown) {
  return toActionResult(async () => {
    await createFirstDirector(InputSchema.parse(input));
    return null;
  });
}
