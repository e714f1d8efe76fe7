"use client";

import { ActionIcon, Tooltip } from "@mantine/core";
import { ArrowLeft, ArrowRight } from "lucide-react";
import Link from "next/link";
import { useAction } from "@/components/forms/use-action";
import type { Neighbour, Neighbours } from "@/components/staff/find-neighbours";
import type { ReleaseActions } from "@/components/staff/release-bar";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import type { ReviewCell } from "@/lib/plot/staff-view";

export interface SittingActionsProps extends ReleaseActions {
  sittingId: string;
  state: ReviewCell["state"];
  exerciseHref: string;
  neighbours: Neighbours;
}

interface StepLinkProps {
  to: Neighbour | null;
  exerciseHref: string;
  isAfter: boolean;
}

/** To the next student's work on the same stone, or the one before. */
function StepLink({ to, exerciseHref, isAfter }: StepLinkProps) {
  const Sign = isAfter ? ArrowRight : ArrowLeft;
  if (to === null) return null;
  const label = `${isAfter ? "Next" : "Previous"}: ${to.words}, same stone`;
  return (
    <Tooltip label={label}>
      <ActionIcon
        component={Link}
        href={`${exerciseHref}/sittings/${to.sittingId}`}
        variant="outline"
        size={36}
        aria-label={label}
      >
        <Sign size={17} aria-hidden="true" />
      </ActionIcon>
    </Tooltip>
  );
}

/** What an instructor can do with one student's one stone: release it or take that back, and go on to the next. */
export function SittingActions(props: SittingActionsProps) {
  const { sittingId, state, exerciseHref, neighbours, release, withdraw } = props;
  const refresh = useRefresh();
  const releasing = useAction(release);
  const withdrawing = useAction(withdraw);
  const failure = releasing.failure ?? withdrawing.failure;
  const act = async (run: typeof releasing.run) => {
    await run([sittingId]);
    refresh();
  };
  return (
    <>
      {failure !== null && <ErrorNote message={failure.message} kept="Nothing was changed." />}
      <StepLink to={neighbours.before} exerciseHref={exerciseHref} isAfter={false} />
      <StepLink to={neighbours.after} exerciseHref={exerciseHref} isAfter />
      {state === "scored" && (
        <ConfirmButton
          variant="filled"
          question="Release this debrief?"
          detail={
            <p>
              The student can read it at once: the reference, what they found, and their points. It can be
              taken back.
            </p>
          }
          confirmLabel="Release"
          onConfirm={() => act(releasing.run)}
        >
          Release
        </ConfirmButton>
      )}
      {state === "released" && (
        <ConfirmButton
          question="Take this debrief back?"
          detail={
            <p>The student can no longer open it. If they have read it, they have seen the reference.</p>
          }
          confirmLabel="Take back"
          onConfirm={() => act(withdrawing.run)}
        >
          Take release back
        </ConfirmButton>
      )}
    </>
  );
}
