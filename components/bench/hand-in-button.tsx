"use client";

import { Button, Group, Modal } from "@mantine/core";
import { useDisclosure } from "@mantine/hooks";
import { useState } from "react";
import type { DoorAnswer } from "@/components/bench/bench-door";
import classes from "@/components/bench/hand-in-button.module.css";
import type { OpenPoints } from "@/components/bench/list-open-points";
import { ErrorNote } from "@/components/ui/error-note";

export interface HandInButtonProps {
  label: string;
  markCount: number;
  openPoints: OpenPoints;
  /** Nothing is handed in while a mark lacks the proof that is asked of it. */
  areProofsRequired: boolean;
  /** Goes to a mark, to prove it or take it away. */
  onGoTo: (markId: string) => void;
  canWrite: boolean;
  handIn: () => Promise<DoorAnswer<{ handedInAt: string }>>;
  onHandedIn: () => void;
}

const UNREACHED = "The server did not answer, so the plot is not handed in.";

/** Marks without the proof that the exercise asks for, each with a way to it. */
function UnprovedList(props: {
  unproved: OpenPoints["unproved"];
  areRequired: boolean;
  onGoTo: (markId: string) => void;
}) {
  const { unproved, areRequired, onGoTo } = props;
  const marks = unproved.length === 1 ? "1 mark has" : `${unproved.length} marks have`;
  return (
    <section aria-label="Marks without a proof">
      <p className={classes.open}>{marks} no proof yet</p>
      <p className="muted">
        Wipe, tilt or regrip, look again, and note what you did.{" "}
        {areRequired
          ? "This exercise requires it before hand-in. A mark that you cannot stand by can be taken away."
          : "This exercise asks for it. You may hand in without: a mark that is in the stone loses nothing by it, and your instructor sees which marks have none."}
      </p>
      <ul className={classes.marks}>
        {unproved.map(({ id, words }) => (
          <li key={id}>
            <Button variant="default" size="sm" onClick={() => onGoTo(id)}>
              <span className="visually-hidden">Go to mark </span>
              {words}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Hands in, after one look at what is still open. */
export function HandInButton(props: HandInButtonProps) {
  const { label, markCount, openPoints, areProofsRequired, canWrite, handIn, onHandedIn, onGoTo } = props;
  const { sentences, unproved } = openPoints;
  const isNothingOpen = sentences.length === 0 && unproved.length === 0;
  const mustProve = areProofsRequired && unproved.length > 0;
  const [opened, dialog] = useDisclosure(false);
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<string | null>(null);

  const confirm = async () => {
    setBusy(true);
    setFailure(null);
    const answer = await handIn();
    setBusy(false);
    if (answer.kind === "done") {
      dialog.close();
      onHandedIn();
    } else setFailure(answer.kind === "unreached" ? UNREACHED : answer.refusal.message);
  };

  return (
    <>
      <Button size="sm" disabled={!canWrite} onClick={dialog.open}>
        Hand in
      </Button>
      <Modal
        opened={opened}
        onClose={dialog.close}
        title={`Hand in ${label}?`}
        closeButtonProps={{ "aria-label": "Close" }}
      >
        <div className={classes.root}>
          {failure !== null && (
            <ErrorNote message={failure} kept="Everything you did is kept." next="Try again in a moment." />
          )}
          <p>
            {markCount === 1 ? "1 mark" : `${markCount} marks`}. Once it is handed in, the plot cannot be
            changed.
          </p>
          {isNothingOpen && <p>Nothing is open.</p>}
          {unproved.length > 0 && (
            <UnprovedList
              unproved={unproved}
              areRequired={areProofsRequired}
              onGoTo={(markId) => {
                dialog.close();
                onGoTo(markId);
              }}
            />
          )}
          {sentences.length > 0 && (
            <div>
              <p className={classes.open}>Still open</p>
              <ul className={classes.list}>
                {sentences.map((point) => (
                  <li key={point}>{point}</li>
                ))}
              </ul>
            </div>
          )}
          <Group justify="flex-end" gap="sm">
            <Button variant="subtle" onClick={dialog.close}>
              Go on plotting
            </Button>
            <Button loading={busy} disabled={mustProve} onClick={confirm}>
              {isNothingOpen || mustProve
                ? "Hand in"
                : unproved.length > 0
                  ? "Hand in without"
                  : "Hand in as it is"}
            </Button>
          </Group>
        </div>
      </Modal>
    </>
  );
}
