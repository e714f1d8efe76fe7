"use client";

import { Button, Checkbox, Group, NumberInput, Radio, Select } from "@mantine/core";
import Link from "next/link";
import { type FormEvent, useState } from "react";
import { CAUSE_LABELS, type DebriefRow } from "@/components/debrief/debrief-row";
import { useAction } from "@/components/forms/use-action";
import { useReviewDesk } from "@/components/review/review-desk-context";
import { ErrorNote } from "@/components/ui/error-note";
import { CAUSES, type Cause } from "@/lib/plot/mark";
import type { TouchedExercise } from "@/lib/plot/rescore-view";

/** Whom the new version touches, with the way to the rescore that shows what would change. */
function Touched({ version, touched }: { version: number; touched: readonly TouchedExercise[] }) {
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
              {title}, {sectionName}: {count === 1 ? "1 result" : `${count} results`}
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Takes a stray into the stone's reference: a mark that was right, or a decoy for those to come. */
export function AcceptForm({ row, onDone }: { row: DebriefRow; onDone: () => void }) {
  const { view, actions, put } = useReviewDesk();
  const { run, pending, failure } = useAction(actions.acceptStray);
  const markId = row.key.slice(row.key.indexOf(":") + 1);
  const plotted = view.debrief.plot.marks.find(({ id }) => id === markId);
  const [kind, setKind] = useState<"mark" | "decoy">("mark");
  const [characteristic, setCharacteristic] = useState(plotted?.characteristic ?? "");
  const [isOptional, setOptional] = useState(false);
  const [cause, setCause] = useState<Cause>(row.cause ?? "unexplained");
  const [extent, setExtent] = useState<"as-drawn" | "dot" | "round">("as-drawn");
  const [across, setAcross] = useState<number>(2);
  const [done, setDone] = useState<{ version: number; touched: readonly TouchedExercise[] } | null>(null);
  if (done !== null) return <Touched {...done} />;
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const saved = await run({
      sittingId: view.debrief.sittingId,
      markId,
      baseVersion: view.stone.referenceVersion,
      extent: extent === "round" ? { kind: extent, across: across / 100 } : { kind: extent },
      as: kind === "mark" ? { kind, characteristic, optional: isOptional } : { kind, cause },
    });
    if (saved === null) return;
    put(saved.value.review);
    setDone(saved.value);
  };
  return (
    <form onSubmit={submit} style={{ display: "grid", gap: "0.875rem" }}>
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
      <Radio.Group
        label="It becomes"
        value={kind}
        onChange={(next) => setKind(next === "decoy" ? "decoy" : "mark")}
      >
        <Group mt={6} gap="6px 1rem">
          <Radio value="mark" label="A mark of the reference" />
          <Radio value="decoy" label="A decoy: a place that misleads" />
        </Group>
      </Radio.Group>
      {kind === "mark" ? (
        <>
          <Select
            label="Characteristic"
            data={view.debrief.characteristics.map(({ name, label }) => ({ value: name, label }))}
            value={characteristic}
            searchable
            allowDeselect={false}
            onChange={(next) => setCharacteristic(next ?? characteristic)}
          />
          <Checkbox
            label="Need not be plotted (gives no points, takes none)"
            checked={isOptional}
            onChange={(event) => setOptional(event.currentTarget.checked)}
          />
        </>
      ) : (
        <Select
          label="Misleads by"
          data={CAUSES.map((value) => ({ value, label: CAUSE_LABELS[value] }))}
          value={cause}
          allowDeselect={false}
          onChange={(next) => setCause(CAUSES.find((one) => one === next) ?? cause)}
        />
      )}
      <Radio.Group
        label="Drawn"
        value={extent}
        onChange={(next) => setExtent(next === "dot" || next === "round" ? next : "as-drawn")}
      >
        <Group mt={6} gap="6px 1rem">
          <Radio value="as-drawn" label="As the student drew it" />
          <Radio value="dot" label="As a dot" />
          <Radio value="round" label="As a circle" />
        </Group>
      </Radio.Group>
      {extent === "round" && (
        <NumberInput
          label="Across, % of the girdle width"
          min={0.5}
          max={100}
          decimalScale={1}
          value={across}
          onChange={(next) => setAcross(typeof next === "number" ? next : across)}
        />
      )}
      <p>
        It is saved as version {view.stone.referenceVersion + 1}. Results stay as they are until you rescore,
        which shows first whom it touches.
      </p>
      <Group justify="flex-end" gap="sm">
        <Button variant="subtle" onClick={onDone}>
          Cancel
        </Button>
        <Button type="submit" loading={pending} disabled={characteristic === ""}>
          Save the new version
        </Button>
      </Group>
    </form>
  );
}
