"use client";

import { Button } from "@mantine/core";
import { useMemo, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { FeatureEditor, NOTHING_SEEN, readWeight } from "@/components/tray/feature-editor";
import { EmptyState } from "@/components/ui/empty-state";
import { ErrorNote } from "@/components/ui/error-note";
import { LinkButton } from "@/components/ui/link-button";
import type { StoneEvidence } from "@/lib/plot/stone-check";
import type { StoneToCheck } from "@/lib/plot/student-view";

export interface StudentCheckProps {
  view: StoneToCheck;
  send: (input: { exerciseStoneId: string; evidence: Omit<StoneEvidence, "cut"> }) => Promise<ActionResult>;
}

/**
 * A student says what they see of the stone in hand. It goes to the instructor; nothing comes back, so that nobody can
 * try out here what the reference has.
 */
export function StudentCheck({ view, send }: StudentCheckProps) {
  const { stone, exerciseStoneId } = view;
  const [draft, setDraft] = useState(NOTHING_SEEN);
  const [isSent, setSent] = useState(false);
  const { run, pending, failure } = useAction(send);
  const proportions = useMemo(() => stone.proportions, [stone.proportions]);
  const submit = async () => {
    const evidence = {
      marks: [...draft.marks],
      weightCt: readWeight(draft),
      isHeldByLandmark: draft.isHeldByLandmark,
    };
    if ((await run({ exerciseStoneId, evidence })) !== null) setSent(true);
  };
  if (isSent) {
    return (
      <EmptyState
        title="Sent to your instructor"
        action={<LinkButton href="/my-stones">My stones</LinkButton>}
      >
        They see whether the stone fits its label, and tell you if it does not. Keep the stone with its label
        until then.
      </EmptyState>
    );
  }
  return (
    <FeatureEditor
      cut={stone.cut}
      proportions={proportions}
      characteristics={view.characteristics}
      landmark={stone.landmark}
      draft={draft}
      onChange={(part) => setDraft((before) => ({ ...before, ...part }))}
    >
      <Button onClick={submit} loading={pending} disabled={draft.marks.length === 0}>
        Send to the instructor
      </Button>
      {failure !== null && (
        <ErrorNote message={failure.message} kept="What you plotted is still here." faults={failure.faults} />
      )}
      <p className="muted">
        For when you doubt that this is {stone.label}. It is no part of your plot and gives or takes no
        points. What it says goes to your instructor alone.
      </p>
    </FeatureEditor>
  );
}
