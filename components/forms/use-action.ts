"use client";

import { useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import type { Fault } from "@/lib/base/app-error";

export interface ActionFailure {
  readonly message: string;
  readonly faults: readonly Fault[];
}

/** Shown when the action never answered: the server is down, or the network is. */
const NO_ANSWER: ActionFailure = {
  message: "The server did not answer, so nothing was changed. What you entered is still here; try again.",
  faults: [],
};

/**
 * Calls a server action from a form: `run` gives its value, or null after a refusal, which then stands in `failure`
 * and is told to `onFailure`.
 */
export function useAction<Args extends readonly unknown[], Value>(
  action: (...args: Args) => Promise<ActionResult<Value>>,
  onFailure: (failure: ActionFailure) => void = () => {},
) {
  const fail = (reason: ActionFailure) => {
    setFailure(reason);
    onFailure(reason);
  };
  const [pending, setPending] = useState(false);
  const [failure, setFailure] = useState<ActionFailure | null>(null);
  const run = async (...args: Args): Promise<{ readonly value: Value } | null> => {
    setPending(true);
    setFailure(null);
    try {
      const result = await action(...args);
      if (result.ok) return { value: result.value };
      fail(result);
      return null;
    } catch {
      fail(NO_ANSWER);
      return null;
    } finally {
      setPending(false);
    }
  };
  return { run, pending, failure, clearFailure: () => setFailure(null) };
}
