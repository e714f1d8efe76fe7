"use client";

import { Button, type ButtonProps } from "@mantine/core";
import { notifications } from "@mantine/notifications";
import { useRouter } from "next/navigation";
import type { ReactNode } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import classes from "@/components/my-stones/begin-button.module.css";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { ErrorNote } from "@/components/ui/error-note";
import { toMinutes } from "@/components/ui/to-minutes";
import { useRefresh } from "@/components/ui/use-refresh";
import type { MyExercise } from "@/lib/plot/student-view";

export type OpenSitting = (
  exerciseStoneId: string,
  agreedMinutes: number | null,
  attempt: number | null,
) => Promise<ActionResult<{ sittingId: string }>>;

/** What a student is told once before the time of a stone begins to run. */
function TimedWords({ minutes }: { minutes: number }) {
  return (
    <>
      <p>
        This stone is timed: you have {toMinutes(minutes)} from the moment you begin, and the time runs on
        whatever happens: also while this page is closed or the computer sleeps.
      </p>
      <p className={classes.after}>
        When it is up, everything you did is handed in as it stands. Have the stone and the loupe at hand.
      </p>
    </>
  );
}

export interface BeginButtonProps extends ButtonProps {
  stone: MyExercise["stones"][number];
  /** A further attempt by its number; null for the first. */
  attempt: number | null;
  /** The student's own time for it; null without a limit. */
  minutes: number | null;
  openSitting: OpenSitting;
  children: ReactNode;
}

/** Opens a stone on the bench; a timed one after the student was told of the time. */
export function BeginButton(props: BeginButtonProps) {
  const { stone, attempt, minutes, openSitting, children, ...button } = props;
  const router = useRouter();
  const refresh = useRefresh();
  const { run, pending, failure } = useAction(openSitting, ({ message }) => {
    if (minutes === null) notifications.show({ color: "red", title: "The stone was not opened", message });
  });
  const begin = async () => {
    const opened = await run(stone.exerciseStoneId, minutes, attempt);
    if (opened !== null) {
      router.push(`/bench/${opened.value.sittingId}`);
      return true;
    }
    if (minutes !== null) refresh();
    return false;
  };
  if (minutes !== null) {
    return (
      <ConfirmButton
        {...button}
        question={`Begin ${stone.label}? ${toMinutes(minutes)} from now`}
        detail={
          <>
            <TimedWords minutes={minutes} />
            {failure !== null && <ErrorNote message={failure.message} />}
          </>
        }
        confirmLabel="Begin now"
        onConfirm={begin}
      >
        {children}
      </ConfirmButton>
    );
  }
  return (
    <Button variant="outline" {...button} loading={pending} onClick={begin}>
      {children}
    </Button>
  );
}
