"use client";

import { Button, Radio, Select, TextInput } from "@mantine/core";
import { notifications } from "@mantine/notifications";
import { type FormEvent, useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import classes from "@/components/staff/allowances.module.css";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import type { RankedStone } from "@/lib/plot/rank-retake-stones";
import type { ReviewGrid } from "@/lib/plot/staff-view";

export interface RetakePlace {
  readonly studentId: string;
  readonly exerciseStoneId: string;
}
export type ListRetakeStones = (place: RetakePlace) => Promise<ActionResult<RankedStone[]>>;
export type GrantRetake = (
  input: RetakePlace & { readonly stoneId: string | null; readonly reason: string },
) => Promise<ActionResult>;

const SAME = "same";

/** What a student has handed in, and so may sit again. */
function listHandedIn({ cells, stones }: ReviewGrid, studentId: string | null) {
  const labels = new Map(stones.map((stone) => [stone.exerciseStoneId, stone.label]));
  return cells
    .filter(
      (cell) => cell.studentId === studentId && cell.state !== "not-begun" && cell.state !== "on-the-bench",
    )
    .map((cell) => ({
      value: cell.exerciseStoneId,
      label: labels.get(cell.exerciseStoneId) ?? "",
      isReleased: cell.state === "released",
    }));
}

/** Whether the exercise takes no work of the student any more: then a retake alone lets them begin nothing. */
function isClosedFor({ exercise, students }: ReviewGrid, studentId: string | null): boolean {
  const own = students.find((one) => one.studentId === studentId);
  const later = [own?.dueAt, own?.closesAt].flatMap((at) => at ?? []);
  return exercise.phase === "closed" && !later.some((at) => Date.parse(at) > Date.now());
}

function StoneChoice(props: {
  offered: readonly RankedStone[];
  isReleased: boolean;
  label: string;
  value: string;
  onChange: (value: string) => void;
}) {
  const { offered, isReleased, label, value, onChange } = props;
  return (
    <Radio.Group label="On which stone" value={value} onChange={onChange}>
      <div className={classes.choices}>
        {offered.map((one, index) => (
          <Radio
            key={one.stoneId}
            value={one.stoneId}
            label={`${one.label}, ${one.trayName}${index === 0 ? ": the nearest in difficulty" : ""}`}
            description={one.because}
          />
        ))}
        <Radio
          value={SAME}
          label={`${label} again`}
          description={
            isReleased
              ? "Its debrief is released: the student may know what is in it."
              : "The student knows what they plotted, and not yet what is in it."
          }
        />
      </div>
      {offered.length === 0 && (
        <p className="muted">
          There is no other stone with a reference under the same scales that the student has not met.
        </p>
      )}
    </Radio.Group>
  );
}

/** Grants one student a retake of a stone: on another of like difficulty, or the same again. */
export function RetakeForm(props: {
  grid: ReviewGrid;
  listRetakeStones: ListRetakeStones;
  grantRetake: GrantRetake;
}) {
  const { grid, listRetakeStones, grantRetake } = props;
  const refresh = useRefresh();
  const listing = useAction(listRetakeStones);
  const granting = useAction(grantRetake);
  const [studentId, setStudentId] = useState<string | null>(null);
  const [placeId, setPlaceId] = useState<string | null>(null);
  const [offered, setOffered] = useState<readonly RankedStone[] | null>(null);
  const [choice, setChoice] = useState(SAME);
  const [reason, setReason] = useState("");
  const handedIn = listHandedIn(grid, studentId);
  const place = handedIn.find(({ value }) => value === placeId);
  const failure = granting.failure ?? listing.failure;

  const choosePlace = async (exerciseStoneId: string | null) => {
    setPlaceId(exerciseStoneId);
    setOffered(null);
    if (exerciseStoneId === null || studentId === null) return;
    const listed = await listing.run({ studentId, exerciseStoneId });
    if (listed === null) return;
    setOffered(listed.value);
    setChoice(listed.value[0]?.stoneId ?? SAME);
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (studentId === null || placeId === null || offered === null) return;
    const stoneId = choice === SAME ? null : choice;
    if ((await granting.run({ studentId, exerciseStoneId: placeId, stoneId, reason })) === null) return;
    notifications.show({ message: "The retake is granted; it stands in the student’s own stones." });
    setPlaceId(null);
    setOffered(null);
    setReason("");
    refresh();
  };
  return (
    <form className={classes.form} onSubmit={submit} noValidate>
      <h3>Retake</h3>
      <p className="muted">The latest attempt counts, on whichever stone it is.</p>
      {failure !== null && <ErrorNote message={failure.message} kept="Nothing was changed." />}
      <div className={classes.pair}>
        <Select
          label="Retake for"
          placeholder="Choose a student"
          searchable
          data={grid.students.map((student) => ({ value: student.studentId, label: student.name }))}
          value={studentId}
          onChange={(id) => {
            setStudentId(id);
            setPlaceId(null);
            setOffered(null);
          }}
        />
        <Select
          label="Of"
          placeholder={
            studentId !== null && handedIn.length === 0 ? "Nothing is handed in" : "Choose a stone"
          }
          disabled={handedIn.length === 0}
          data={handedIn.map(({ value, label }) => ({ value, label }))}
          value={placeId}
          onChange={choosePlace}
        />
      </div>
      {place !== undefined && offered !== null && (
        <StoneChoice
          offered={offered}
          isReleased={place.isReleased}
          label={place.label}
          value={choice}
          onChange={setChoice}
        />
      )}
      {place !== undefined && isClosedFor(grid, studentId) && (
        <p role="status">
          The exercise is closed for this student: give an extension as well, or the retake cannot be begun.
        </p>
      )}
      <TextInput
        label="Reason for the retake"
        placeholder="For staff alone"
        maxLength={500}
        autoComplete="off"
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
      <Button
        type="submit"
        variant="outline"
        className={classes.end ?? ""}
        loading={granting.pending || listing.pending}
        disabled={offered === null}
      >
        Grant the retake
      </Button>
    </form>
  );
}
