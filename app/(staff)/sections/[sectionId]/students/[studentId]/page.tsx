import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { ProgressBoard } from "@/components/progress/progress-board";
import { EmptyState } from "@/components/ui/empty-state";
import { PageHeader } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { requireViewer } from "@/lib/data/require-viewer";
import { getProgress } from "@/lib/workflows/get-progress";

export const metadata: Metadata = { title: "Student's progress" };

export default async function StudentProgressPage({
  params,
}: {
  params: Promise<{ sectionId: string; studentId: string }>;
}) {
  const { sectionId, studentId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const progress = await getForPage(() => getProgress(viewer, { studentId, sectionId }));
  return (
    <div className="page">
      <PageHeader
        title={progress.studentName}
        trail={[
          { href: "/sections", label: "Sections" },
          { href: `/sections/${sectionId}`, label: "Section" },
        ]}
        lead="As the student sees it: from released debriefs of this section alone."
      />
      <div className="stack">
        {progress.plots === 0 ? (
          <EmptyState title="No debrief is released yet">
            Release this student&apos;s debriefs, and they are added up here.
          </EmptyState>
        ) : (
          <ProgressBoard progress={progress} debriefHref={null} />
        )}
        {progress.leftOut.length > 0 && (
          <p className="muted">Left out, as you are reading them blind: {progress.leftOut.join(", ")}.</p>
        )}
        <PracticeNote />
      </div>
    </div>
  );
}
