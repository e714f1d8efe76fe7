"use client";

import { Button, Group, Modal } from "@mantine/core";
import { useDisclosure } from "@mantine/hooks";
import { useState } from "react";
import type { DoorAnswer } from "@/components/bench/bench-door";
import classes from "@/components/bench/hand-in-button.module.css";
import { ErrorNote } from "@/components/ui/error-note";

export interface HandInButtonProps {
  label: string;
  markCount: number;
  openPoints: readonly string[];
  canWrite: boolean;
  handIn: () => Promise<DoorAnswer<{ handedInAt: string }>>;
  onHandedIn: () => void;
}

const UNREACHED = "The server did not answer, so the plot is not handed in yet.";

/** Hands in, after one look at what is still open. */
export function HandInButton(props: HandInButtonProps) {
  const { label, markCount, openPoints, canWrite, handIn, onHandedIn } = props;
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
          {openPoints.length === 0 ? (
            <p>Nothing is open.</p>
          ) : (
            <div>
              <p className={classes.open}>Still open</p>
              <ul className={classes.list}>
                {openPoints.map((point) => (
                  <li key={point}>{point}</li>
                ))}
              </ul>
            </div>
          )}
          <Group justify="flex-end" gap="sm">
            <Button variant="subtle" onClick={dialog.close}>
              Go on plotting
            </Button>
            <Button loading={busy} onClick={confirm}>
              {openPoints.length === 0 ? "Hand in" : "Hand in as it is"}
            </Button>
          </Group>
        </div>
      </Modal>
    </>
  );
}
