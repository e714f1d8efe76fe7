"use client";

import { Button } from "@mantine/core";
import { RefreshCw } from "lucide-react";
import type { ReactNode } from "react";
import type { z } from "zod";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import panel from "@/components/staff/panel.module.css";
import { PageHeader, type PageHeaderProps } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { CELL_STATE_WORDS } from "@/components/ui/state-words";
import { StatusBadge } from "@/components/ui/status-badge";
import { useRefresh } from "@/components/ui/use-refresh";
import { When } from "@/components/ui/when";
import { GRADED_PROPERTIES, type PlotGrades } from "@/lib/plot/grades";
import type { BenchWatchSchema, ReviewCell } from "@/lib/plot/staff-view";

export interface BenchWatchProps {
  watch: z.infer<typeof BenchWatchSchema>;
  state: ReviewCell["state"];
  trail: PageHeaderProps["trail"];
  actions: ReactNode;
}

function GradesSoFar({ grades }: { grades: PlotGrades }) {
  const given = GRADED_PROPERTIES.filter((property) => grades[property] !== undefined);
  return (
    <section className={panel.form} aria-label="Grades so far">
      <h2>Grades so far</h2>
      {given.length === 0 ? (
        <p className="muted">None given yet.</p>
      ) : (
        <dl className={panel.facts}>
          {given.map((property) => (
            <div key={property}>
              <dt>{PROPERTY_LABELS[property]}</dt>
              <dd>{grades[property]}</dd>
            </div>
          ))}
        </dl>
      )}
      <PracticeNote />
    </section>
  );
}

/** A plot as it stands, not handed in yet. Looking on changes nothing for the student. */
export function BenchWatch({ watch, state, trail = [], actions }: BenchWatchProps) {
  const refresh = useRefresh();
  const { tone, words } = CELL_STATE_WORDS[state];
  const { marks, grades } = watch.plot;
  return (
    <div className="page-wide">
      <PageHeader
        title={`${watch.label}, ${watch.studentName}`}
        trail={trail}
        lead={
          <>
            <StatusBadge tone={tone}>{words}</StatusBadge> ·{" "}
            {marks.length === 1 ? "1 mark" : `${marks.length} marks`}
            {state === "scoring" ? ", handed in" : " so far, not handed in"}
            {state === "on-the-bench" && watch.endsAt !== null && (
              <>
                {" · "}time runs out <When iso={watch.endsAt} show="both" />
              </>
            )}
          </>
        }
        actions={
          <>
            {actions}
            <Button
              variant="outline"
              leftSection={<RefreshCw size={16} aria-hidden="true" />}
              onClick={() => refresh()}
            >
              Look again
            </Button>
          </>
        }
      />
      <h2 className="visually-hidden">The plot so far</h2>
      <PlotEditor
        key={JSON.stringify(marks)}
        mode="bench"
        readOnly
        cut={watch.stone.cut}
        proportions={watch.stone.proportions}
        characteristics={watch.characteristics}
        initialMarks={marks}
        aside={<GradesSoFar grades={grades} />}
      />
    </div>
  );
}
