"use client";

import { Button, type ButtonProps, Group, Modal } from "@mantine/core";
import { useDisclosure } from "@mantine/hooks";
import { type ReactNode, useState } from "react";

export interface ConfirmButtonProps extends Omit<ButtonProps, "children" | "onClick"> {
  children: ReactNode;
  /** The question, as the dialog's title: "Release 12 debriefs?" */
  question: string;
  /** What will happen and whether it can be undone. */
  detail?: ReactNode;
  /** The verb of the button that does it. */
  confirmLabel: string;
  /** May take its time; the dialog closes when it is through, and stays open if it throws or gives false. */
  onConfirm: () => Promise<unknown> | unknown;
  danger?: boolean;
}

/** A button that asks once before it acts. */
export function ConfirmButton(props: ConfirmButtonProps) {
  const { children, question, detail, confirmLabel, onConfirm, danger = false, ...button } = props;
  const [opened, dialog] = useDisclosure(false);
  const [busy, setBusy] = useState(false);
  const confirm = async () => {
    setBusy(true);
    try {
      if ((await onConfirm()) !== false) dialog.close();
    } finally {
      setBusy(false);
    }
  };
  return (
    <>
      <Button variant="outline" {...(danger ? { color: "red" } : {})} {...button} onClick={dialog.open}>
        {children}
      </Button>
      <Modal
        opened={opened}
        onClose={dialog.close}
        title={question}
        closeButtonProps={{ "aria-label": "Close" }}
      >
        {detail}
        <Group justify="flex-end" mt="lg" gap="sm">
          <Button variant="subtle" onClick={dialog.close} data-autofocus>
            Cancel
          </Button>
          <Button {...(danger ? { color: "red" } : {})} loading={busy} onClick={confirm}>
            {confirmLabel}
          </Button>
        </Group>
      </Modal>
    </>
  );
}
