"use client";

import { Button, Modal } from "@mantine/core";
import { useState } from "react";
import type { DebriefRow } from "@/components/debrief/debrief-row";
import words from "@/components/debrief/review-words.module.css";
import { listRowComments, listRowOverrules } from "@/components/debrief/row-notes";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { AcceptForm } from "@/components/review/accept-form";
import { CommentForm } from "@/components/review/comment-form";
import classes from "@/components/review/review.module.css";
import { useReviewDesk } from "@/components/review/review-desk-context";
import { CommentNote, OverruleNote } from "@/components/review/review-notes";
import { RulingForm } from "@/components/review/ruling-form";
import type { GradedProperty } from "@/lib/plot/grades";

type Open = "overrule" | "accept" | null;

/** What was ruled and written about a row, and what may be done with it. */
export function RowTools({ row }: { row: DebriefRow }) {
  const { view } = useReviewDesk();
  const [open, setOpen] = useState<Open>(null);
  const [isWriting, setWriting] = useState(false);
  const name = `${row.callout} ${row.title}`;
  const close = () => setOpen(null);
  return (
    <div className={words.notes}>
      {listRowOverrules(view.debrief, row).map((one) => (
        <OverruleNote key={one.overruleId} overrule={one} />
      ))}
      {listRowComments(view.debrief, row).map((one) => (
        <CommentNote key={one.commentId} comment={one} />
      ))}
      {isWriting ? (
        <CommentForm subject={row.key} comment={null} onDone={() => setWriting(false)} />
      ) : (
        <span className={`${classes.tools} no-print`}>
          <Button
            variant="subtle"
            size="compact-sm"
            aria-label={`Overrule ${name}`}
            disabled={view.locked !== null}
            onClick={() => setOpen("overrule")}
          >
            Overrule
          </Button>
          <Button
            variant="subtle"
            size="compact-sm"
            aria-label={`Comment on ${name}`}
            onClick={() => setWriting(true)}
          >
            Comment
          </Button>
          {row.outcome === "stray" && view.stone.mayEdit && (
            <Button
              variant="subtle"
              size="compact-sm"
              aria-label={`Take ${name} into the reference`}
              onClick={() => setOpen("accept")}
            >
              Into the reference
            </Button>
          )}
        </span>
      )}
      {open !== null && (
        <Modal
          opened
          onClose={close}
          title={open === "accept" ? `Take ${name} into the reference` : `Overrule ${name}`}
          closeButtonProps={{ "aria-label": "Close" }}
        >
          {open === "overrule" && <RulingForm subject={{ kind: "row", row }} onDone={close} />}
          {open === "accept" && <AcceptForm row={row} onDone={close} />}
        </Modal>
      )}
    </div>
  );
}

/** Overrules the points of a grade. */
export function GradeTool({ property }: { property: GradedProperty }) {
  const { view } = useReviewDesk();
  const [isOpen, setOpen] = useState(false);
  const name = PROPERTY_LABELS[property].toLowerCase();
  if (!view.gradeWorth.some((one) => one.property === property)) return null;
  return (
    <>
      <Button
        className="no-print"
        variant="subtle"
        size="compact-sm"
        aria-label={`Overrule the points for ${name}`}
        disabled={view.locked !== null}
        onClick={() => setOpen(true)}
      >
        Overrule
      </Button>
      {isOpen && (
        <Modal
          opened
          onClose={() => setOpen(false)}
          title={`Overrule the points for ${name}`}
          closeButtonProps={{ "aria-label": "Close" }}
        >
          <RulingForm subject={{ kind: "grade", property }} onDone={() => setOpen(false)} />
        </Modal>
      )}
    </>
  );
}
