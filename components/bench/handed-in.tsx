"use client";

import { Button, Group } from "@mantine/core";
import Link from "next/link";
import classes from "@/components/bench/handed-in.module.css";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import { PageHeader } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { StatusBadge } from "@/components/ui/status-badge";
import { When } from "@/components/ui/when";
import { GRADED_PROPERTIES } from "@/lib/plot/grades";
import type { BenchView } from "@/lib/plot/student-view";

/** When the debrief can be read. */
function DebriefWords({ debriefsAt }: { debriefsAt: string | null }) {
  if (debriefsAt === null) return <span>The debrief opens once your instructor releases it.</span>;
  return (
    <span>
      The debrief is not open yet. Debriefs of this exercise open from <When iso={debriefsAt} />.
    </span>
  );
}

/** A sitting that is handed in, before its debrief: what was given, and what comes next. */
export function HandedIn({ view, handedInAt }: { view: BenchView; handedInAt: string }) {
  return (
    <div className="page-wide">
      <PageHeader
        title={`${view.stone.label} is handed in`}
        trail={[{ href: "/my-stones", label: "My stones" }]}
        lead={
          <Group gap="md">
            <StatusBadge tone="done">Handed in</StatusBadge>
            <When iso={handedInAt} show="both" />
            {view.timedOut && (
              <span>The time ran out: what was saved by then was handed in, whatever was still open.</span>
            )}
            <DebriefWords debriefsAt={view.debriefsAt} />
          </Group>
        }
        actions={
          <Button component={Link} href="/my-stones">
            What is next
          </Button>
        }
      />
      <h2 className="visually-hidden">Your plot</h2>
      <PlotEditor
        mode="bench"
        cut={view.stone.cut}
        proportions={view.stone.proportions}
        characteristics={view.characteristics}
        initialMarks={view.plot.marks}
        readOnly
      />
      <section className={classes.grades} aria-labelledby="given-title">
        <h2 id="given-title">Grades you gave</h2>
        <dl className={classes.list}>
          {GRADED_PROPERTIES.map((property) => (
            <div key={property}>
              <dt>{PROPERTY_LABELS[property]}</dt>
              <dd>{view.plot.grades[property] ?? "Not given"}</dd>
            </div>
          ))}
        </dl>
        <PracticeNote />
      </section>
    </div>
  );
}
