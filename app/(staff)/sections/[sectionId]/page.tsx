import type { Metadata } from "next";
import { createLinksAction } from "@/app/(staff)/people/actions";
import { getForPage } from "@/app/get-for-page";
import { PaperMenu } from "@/components/paper/paper-menu";
import { ExerciseFilter } from "@/components/section/exercise-filter";
import { SectionBoard } from "@/components/section/section-board";
import { SectionExports } from "@/components/section/section-exports";
import { SectionLinks } from "@/components/section/section-links";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { requireViewer } from "@/lib/data/require-viewer";
import { getSectionReport } from "@/lib/workflows/get-section-report";

export const metadata: Metadata = { title: "Section" };

interface SectionPageProps {
  params: Promise<{ sectionId: string }>;
  searchParams: Promise<{ exercise?: string | string[] }>;
}

export default async function SectionPage({ params, searchParams }: SectionPageProps) {
  const { sectionId } = await params;
  const { exercise } = await searchParams;
  const exerciseId = typeof exercise === "string" ? exercise : undefined;
  const viewer = await getForPage(() => requireViewer());
  const report = await getForPage(() => getSectionReport(viewer, { sectionId, exerciseId }));
  const taught =
    report.instructors.length === 0
      ? "Nobody teaches it yet."
      : `Taught by ${report.instructors.join(", ")}.`;
  return (
    <div className="page-wide">
      <PageHeader
        title={report.name}
        trail={[{ href: "/sections", label: "Sections" }]}
        lead={`${report.term}. ${taught} ${report.rates.plots} plots scored.`}
        actions={
          <>
            <ExerciseFilter exercises={report.exercises} shown={exerciseId ?? null} />
            {report.rates.plots > 0 && (
              <PaperMenu
                label="Report"
                address={`/api/sections/${sectionId}/report.pdf`}
                {...(exerciseId === undefined ? {} : { query: { exercise: exerciseId } })}
              />
            )}
            <SectionLinks students={report.students} createLinks={createLinksAction} />
            <SectionExports sectionId={sectionId} />
          </>
        }
      />
      <div className="stack">
        {report.rates.plots === 0 ? (
          <EmptyState
            title="Nothing is scored yet"
            action={
              report.exercises.length === 0 ? (
                <LinkButton href="/exercises/new">Set an exercise</LinkButton>
              ) : (
                <LinkButton href="/exercises">Look at the exercises</LinkButton>
              )
            }
          >
            Once students hand in, this page says how their plots and grades agree with the references.
          </EmptyState>
        ) : (
          <SectionBoard report={report} />
        )}
        <PracticeNote />
      </div>
    </div>
  );
}
