"use client";

import { Button } from "@mantine/core";
import { Printer } from "lucide-react";
import classes from "@/components/debrief/debrief.module.css";
import { PaperMenu } from "@/components/paper/paper-menu";
import { When } from "@/components/ui/when";
import type { DebriefView } from "@/lib/plot/student-view";

/** Points, what was found, and whose plot of what it is. */
export function DebriefLead({ view }: { view: DebriefView }) {
  const { result, reference } = view;
  const scored = reference.marks.filter(({ optional }) => optional !== true).length;
  const found = new Set(result.found.map((one) => one.reference)).size;
  const facts = [
    `${found} of ${scored} found`,
    `${result.overlooked.length} overlooked`,
    result.strays.length === 1 ? "1 stray" : `${result.strays.length} strays`,
  ];
  return (
    <div className={classes.lead}>
      <p className={classes.total}>
        <span className={classes.totalNumber}>{result.total.toFixed(2)}</span> of 100 points
      </p>
      <p>{facts.join(" · ")}</p>
      <p>
        {view.exerciseTitle} · {view.studentName} ·{" "}
        {view.timedOut ? "handed in as the time ran out" : "handed in"} <When iso={view.handedInAt} />
      </p>
    </div>
  );
}

/** What was scored by: the tolerance, and the versions of reference, rubric and engine. */
export function ToleranceWords({ view }: { view: DebriefView }) {
  const widthMm = view.stone.measurementsMm?.[0];
  const inMm = (share: number) =>
    widthMm === undefined ? "" : ` (${(share * widthMm).toFixed(2)} mm on this stone)`;
  return (
    <p className="muted">
      A mark within {view.near} girdle widths{inMm(view.near)} of the reference’s is in the right place;
      beyond {view.far}
      {inMm(view.far)} it is not found. Both lines can be shown over the diagram. Reference{" "}
      {view.referenceVersion}, rubric {view.rubricVersion}, engine {view.detail.engineVersion}.
    </p>
  );
}

/** The debrief on paper. */
export function DebriefPapers({ sittingId }: { sittingId: string }) {
  return (
    <>
      <PaperMenu label="PDF" address={`/api/sittings/${sittingId}/debrief.pdf`} />
      <Button
        variant="outline"
        leftSection={<Printer size={16} aria-hidden="true" />}
        onClick={() => window.print()}
      >
        Print
      </Button>
    </>
  );
}
