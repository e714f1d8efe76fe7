"use client";

import { Button, Modal } from "@mantine/core";
import { useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { LinkSheet } from "@/components/staff/link-sheet";
import { ErrorNote } from "@/components/ui/error-note";
import type { MadeLink } from "@/lib/plot/access-link";

export interface PersonLinkButtonProps {
  userIds: readonly string[];
  /** On the button, and whose link it is. */
  label: string;
  name: string;
  createLinks: (userIds: readonly string[]) => Promise<ActionResult<MadeLink[]>>;
}

/** Makes one-time links and shows them, this once. */
export function PersonLinkButton({ userIds, label, name, createLinks }: PersonLinkButtonProps) {
  const [links, setLinks] = useState<readonly MadeLink[]>([]);
  const { run, pending, failure, clearFailure } = useAction(createLinks);
  const make = async () => setLinks((await run(userIds))?.value ?? []);
  const close = () => {
    setLinks([]);
    clearFailure();
  };
  return (
    <>
      <Button size="xs" variant="subtle" loading={pending} onClick={make} aria-label={`${label} for ${name}`}>
        {label}
      </Button>
      <Modal
        opened={links.length > 0 || failure !== null}
        onClose={close}
        size="xl"
        title={`${label} for ${name}`}
        closeButtonProps={{ "aria-label": "Close" }}
      >
        {failure !== null ? (
          <ErrorNote message={failure.message} faults={failure.faults} />
        ) : (
          <LinkSheet links={links} />
        )}
      </Modal>
    </>
  );
}
