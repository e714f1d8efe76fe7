"use client";

import { Button, type ButtonProps } from "@mantine/core";
import { notifications } from "@mantine/notifications";
import Link from "next/link";
import { useRouter } from "next/navigation";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { ErrorNote } from "@/components/ui/error-note";
import { toMinutes } from "@/components/ui/to-minutes";
import type { MyExercise } from "@/lib/plot/student-view";

type MyStone = MyExercise["stones"][number];
export type OpenSitting = (
  exerciseStoneId: string,
  agreedMinutes: number | null,
) => Promise<ActionResult<{ sittingId: string }>>;

export interface StoneLinkProps extends ButtonProps {
  stone: MyStone;
  /** Whether the exercise takes work now. */
  isTaken: boolean;
  /** The student's own time for it; null without a limit. */
  minutes: number | null;
  openSitting: OpenSitting;
}

/** What a student is told once before the time of a stone begins to run. */
function TimedWords({ minutes }: { minutes: number }) {
  return (
    <>
      <p>
        This stone is timed: you have {toMinutes(minutes)} from the moment you begin, and the time runs on
        whatever happens: also while this page is closed or the computer sleeps.
      </p>
      <p>
        When it is up, everything you did is handed in as it stands. Have the stone and the loupe at hand.
      </p>
    </>
  );
}

/** Leads to what can be done with a stone now: begin, go on, read, or nothing. */
export function StoneLink({ stone, isTaken, minutes, openSitting, ...button }: StoneLinkProps) {
  const router = useRouter();
  const { run, pending, failure } = useAction(openSitting);
  const name = <span className="visually-hidden"> {stone.label}</span>;

  if (stone.state === "debrief-ready" && stone.sittingId !== null) {
    return (
      <Button component={Link} href={`/debrief/${stone.sittingId}`} variant="outline" {...button}>
        Read the debrief{name}
      </Button>
    );
  }
  if (stone.state === "on-the-bench" && stone.sittingId !== null && isTaken) {
    return (
      <Button component={Link} href={`/bench/${stone.sittingId}`} {...button}>
        Go on plotting{name}
      </Button>
    );
  }
  if (stone.state !== "not-begun" || !isTaken) return null;

  const begin = async () => {
    const opened = await run(stone.exerciseStoneId, minutes);
    if (opened !== null) {
      router.push(`/bench/${opened.value.sittingId}`);
      return true;
    }
    if (minutes !== null) {
      router.refresh();
      return false;
    }
    notifications.show({
      color: "red",
      title: "The stone could not be opened",
      message: "Nothing was lost. Reload the page to see where it stands, then try again.",
    });
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
        Begin{name}
      </ConfirmButton>
    );
  }
  return (
    <Button variant="outline" {...button} loading={pending} onClick={begin}>
      Begin{name}
    </Button>
  );
}
