"use client";

import { Button, type ButtonProps } from "@mantine/core";
import { notifications } from "@mantine/notifications";
import Link from "next/link";
import { useRouter } from "next/navigation";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import type { MyExercise } from "@/lib/plot/student-view";

type MyStone = MyExercise["stones"][number];
export type OpenSitting = (exerciseStoneId: string) => Promise<ActionResult<{ sittingId: string }>>;

export interface StoneLinkProps extends ButtonProps {
  stone: MyStone;
  /** Whether the exercise takes work now. */
  isTaken: boolean;
  openSitting: OpenSitting;
}

/** Leads to what can be done with a stone now: begin, go on, read, or nothing. */
export function StoneLink({ stone, isTaken, openSitting, ...button }: StoneLinkProps) {
  const router = useRouter();
  const { run, pending } = useAction(openSitting);
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
    const opened = await run(stone.exerciseStoneId);
    if (opened !== null) {
      router.push(`/bench/${opened.value.sittingId}`);
      return;
    }
    notifications.show({
      color: "red",
      title: "The stone could not be opened",
      message: "Nothing was lost. Reload the page to see where it stands, then try again.",
    });
  };
  return (
    <Button variant="outline" {...button} loading={pending} onClick={begin}>
      Begin{name}
    </Button>
  );
}
