"use client";

import { Button, Modal } from "@mantine/core";
import { useDisclosure } from "@mantine/hooks";
import { KeyRound } from "lucide-react";
import type { ActionResult } from "@/components/forms/action-result";
import classes from "@/components/section/section-links.module.css";
import { PersonLinkButton } from "@/components/staff/person-link-button";
import type { MadeLink } from "@/lib/plot/access-link";

export interface SectionLinksProps {
  students: readonly { readonly studentId: string; readonly name: string }[];
  createLinks: (userIds: readonly string[]) => Promise<ActionResult<MadeLink[]>>;
}

/** One-time links for a section's students, for whoever stands at the desk and cannot sign in. */
export function SectionLinks({ students, createLinks }: SectionLinksProps) {
  const [opened, dialog] = useDisclosure(false);
  return (
    <>
      <Button
        variant="outline"
        leftSection={<KeyRound size={16} aria-hidden="true" />}
        disabled={students.length === 0}
        onClick={dialog.open}
      >
        Sign-in links
      </Button>
      <Modal
        opened={opened}
        onClose={dialog.close}
        size="lg"
        title="Sign-in links"
        closeButtonProps={{ "aria-label": "Close" }}
      >
        <p>
          A link sets a password once: the first one for who was only invited, a new one for who forgot
          theirs. It is shown once, to be copied or printed; make sure that it is the student who gets it.
        </p>
        <ul className={classes.list}>
          {students.map(({ studentId, name }) => (
            <li key={studentId}>
              <span>{name}</span>
              <PersonLinkButton
                userIds={[studentId]}
                label="Make a link"
                name={name}
                createLinks={createLinks}
              />
            </li>
          ))}
        </ul>
      </Modal>
    </>
  );
}
