import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { ProgramBoard } from "@/components/program/program-board";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { PROGRAM_MEASURES } from "@/lib/agreement/program-report";
import { requireViewer } from "@/lib/data/require-viewer";
import { getProgramReport } from "@/lib/workflows/get-program-report";

export const metadata: Metadata = { title: "Program" };

export default async function ProgramPage({
  searchParams,
}: {
  searchParams: Promise<{ measure?: string | string[] }>;
}) {
  const { measure } = await searchParams;
  const viewer = await getForPage(() => requireViewer());
  const report = await getForPage(() => getProgramReport(viewer));
  const { whole } = report;
  const shown = PROGRAM_MEASURES.find((one) => one === measure) ?? "found";
  return (
    <div className="page-wide">
      <PageHeader
        title="Program"
        lead={`${whole.sections === 1 ? "1 section" : `${whole.sections} sections`}, ${whole.plots} plots scored.`}
      />
      <div className="stack">
        {whole.sections === 0 ? (
          <EmptyState
            title="The program has no section yet"
            action={<LinkButton href="/people/sections/new">Make a section</LinkButton>}
          >
            Sections stand side by side here once their students have handed in.
          </EmptyState>
        ) : whole.plots === 0 && report.readers.readings === 0 ? (
          <EmptyState
            title="Nothing is scored yet"
            action={<LinkButton href="/exercises">Look at the exercises</LinkButton>}
          >
            Once students hand in, this page says how sections, terms and instructors agree with the
            references.
          </EmptyState>
        ) : (
          <ProgramBoard report={report} measure={shown} />
        )}
        <PracticeNote />
      </div>
    </div>
  );
}
