"use client";

import { Button, type ButtonProps } from "@mantine/core";
import Link from "next/link";
import { BeginButton, type OpenSitting } from "@/components/my-stones/begin-button";
import { isStoneWaiting } from "@/components/my-stones/is-stone-waiting";
import classes from "@/components/my-stones/stone-link.module.css";
import type { MyExercise } from "@/lib/plot/student-view";

type MyStone = MyExercise["stones"][number];

export interface StoneLinkProps extends ButtonProps {
  stone: MyStone;
  /** Whether the exercise takes work now. */
  isTaken: boolean;
  /** The student's own time for it; null without a limit. */
  minutes: number | null;
  /** Null in a preview: nothing is opened, and the bench is shown without a sitting. */
  openSitting: OpenSitting | null;
  exerciseId: string;
}

/** Leads to what can be done with a stone now: begin, go on, read, sit it again, or nothing. */
export function StoneLink(props: StoneLinkProps) {
  const { stone, isTaken, minutes, openSitting, exerciseId, ...button } = props;
  const name = <span className="visually-hidden"> {stone.label}</span>;
  if (openSitting === null) {
    return (
      <Button
        component={Link}
        href={`/exercises/${exerciseId}/preview/${stone.exerciseStoneId}`}
        variant="outline"
        {...button}
      >
        Look at the bench{name}
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
  if (stone.state === "not-begun" && isTaken && !isStoneWaiting(stone)) {
    return (
      <BeginButton stone={stone} attempt={null} minutes={minutes} openSitting={openSitting} {...button}>
        Begin{name}
      </BeginButton>
    );
  }
  const again = isTaken && stone.attemptsLeft > 0 && stone.attempt > 0 && stone.state !== "on-the-bench" && (
    <BeginButton
      stone={stone}
      attempt={stone.attempt + 1}
      minutes={minutes}
      openSitting={openSitting}
      {...button}
      variant="outline"
    >
      Sit it again{name}
    </BeginButton>
  );
  if (stone.state === "debrief-ready" && stone.sittingId !== null) {
    return (
      <span className={classes.two}>
        <Button component={Link} href={`/debrief/${stone.sittingId}`} variant="outline" {...button}>
          Read the debrief{name}
        </Button>
        {again}
      </span>
    );
  }
  return again === false ? null : again;
}
