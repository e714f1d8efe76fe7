"use client";

import { useRouter } from "next/navigation";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";

export interface GiveUpButtonProps {
  giveUp: () => Promise<ActionResult>;
  /** Where to go then; stays where it is when left out. */
  then?: string;
}

/** Ends a second reading that is not handed in. Asks once. */
export function GiveUpButton({ giveUp, then }: GiveUpButtonProps) {
  const router = useRouter();
  const refresh = useRefresh();
  const { run, failure } = useAction(giveUp);
  const confirm = async () => {
    if ((await run()) === null) return true;
    if (then === undefined) refresh();
    else router.push(then);
    return true;
  };
  return (
    <>
      <ConfirmButton
        variant="subtle"
        danger
        question="Give this reading up?"
        detail={
          <p>
            What you drew is kept and not compared. You may see the reference again, so you cannot read this
            stone a second time.
          </p>
        }
        confirmLabel="Give it up"
        onConfirm={confirm}
      >
        Give it up
      </ConfirmButton>
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
    </>
  );
}
