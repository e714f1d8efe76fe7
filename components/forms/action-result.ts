/** What a server action gives back to the form that called it. */

import { ZodError } from "zod";
import { type Fault, isAppError } from "@/lib/base/app-error";
import { toFaults } from "@/lib/plot/to-faults";

export type ActionResult<Value = undefined> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly message: string; readonly faults: readonly Fault[] };

/**
 * Runs the body of an action. A refusal that a person is told about becomes a result; anything else, a redirect of
 * the framework among it, is thrown on.
 */
export async function toActionResult<Value>(body: () => Promise<Value>): Promise<ActionResult<Value>> {
  try {
    return { ok: true, value: await body() };
  } catch (thrown) {
    if (isAppError(thrown)) return { ok: false, message: thrown.message, faults: thrown.faults };
    if (thrown instanceof ZodError) {
      return {
        ok: false,
        message: "Some of what was sent cannot be taken as it is.",
        faults: toFaults(thrown),
      };
    }
    throw thrown;
  }
}
