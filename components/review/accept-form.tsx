"use client";

import { Button, Group } from "@mantine/core";
import Link from "next/link";
import { type FormEvent, useState } from "react";
import type { DebriefRow } from "@/components/debrief/debrief-row";
import { useAction } from "@/components/forms/use-action";
import { type AcceptChoice, AcceptFields } from "@/components/review/accept-fields";
import { useReviewDesk } from "@/components/review/review-desk-context";
import { ErrorNote } from "@/components/ui/error-note";
import type { PlottedMark } from "@/lib/plot/mark";
import type { TouchedExercise } from "@/lib/plot/rescore-view";

interface Accepted {
  readonly version: number;
  readonly touched: readonly TouchedExercise[];
}

/** Whom the new version touches, with the way to the rescore that shows what would change. */
function Touched({ version, touched, onDone }: Accepted & { onDone: () => void }) {
  const older = touched.filter((one) => one.older > 0);
  return (
    <div role="status">
      <p>
        Version {version} of the reference is saved. No points have changed yet
        {older.length === 0 ? "." : ": rescore to see whom it touches, before anything is applied."}
      </p>
      <ul>
        {older.map(({ exerciseId, title, sectionName, older: count }) => (
          <li key={exerciseId}>
            <Link href={`/exercises/${exerciseId}/rescore`}>
              Rescore {title}, {sectionName}: {count === 1 ? "1 result" : `${count} results`}
            </Link>
          </li>
        ))}
      </ul>
      <Group justify="flex-end" mt="md">
        <Button variant="outline" onClick={onDone}>
          Back to the review
        </Button>
      </Group>
    </div>
  );
}

/** What the fields say before any is touched: the mark as the student has it. */
function beginChoice(row: DebriefRow, plotted: PlottedMark | undefined): AcceptChoice {
  return {
    kind: "mark",
    characteristic: plotted?.characteristic ?? "",
    isOptional: false,
    cause: row.cause ?? "unexplained",
    extent: "as-drawn",
    across: 2,
  };
}

function toInput({ kind, characteristic, isOptional, cause, extent, across }: AcceptChoice) {
  return {
    extent: extent === "round" ? { kind: extent, across: across / 100 } : { kind: extent },
    as: kind === "mark" ? { kind, characteristic, optional: isOptional } : { kind, cause },
  };
}

/** Takes a stray into the stone's reference: a mark that was right, or a decoy for those to come. */
export function AcceptForm({ row, onDone }: { row: DebriefRow; onDone: () => void }) {
  const { view, actions, put } = useReviewDesk();
  const { run, pending, failure } = useAction(actions.acceptStray);
  const markId = row.key.slice(row.key.indexOf(":") + 1);
  const [choice, setChoice] = useState(() =>
    beginChoice(
      row,
      view.debrief.plot.marks.find(({ id }) => id === markId),
    ),
  );
  const [done, setDone] = useState<Accepted | null>(null);
  if (done !== null) return <Touched {...done} onDone={onDone} />;
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const { sittingId } = view.debrief;
    const baseVersion = view.stone.referenceVersion;
    const saved = await run({ sittingId, markId, baseVersion, ...toInput(choice) });
    if (saved === null) return;
    put(saved.value.review);
    setDone(saved.value);
  };
  return (
    <form onSubmit={submit} style={{ display: "grid", gap: "0.875rem" }}>
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
      <AcceptFields choice={choice} onChange={(part) => setChoice({ ...choice, ...part })} />
      <p>
        It is saved as version {view.stone.referenceVersion + 1}. Results stay as they are until you rescore,
        which shows first whom it touches.
      </p>
      <Group justify="flex-end" gap="sm">
        <Button variant="subtle" onClick={onDone}>
          Cancel
        </Button>
        <Button type="submit" loading={pending} disabled={choice.characteristic === ""}>
          Save the new version
        </Button>
      </Group>
    </form>
  );
}
