import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { ProgressBoard } from "@/components/progress/progress-board";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { requireViewer } from "@/lib/data/require-viewer";
import { getProgress } from "@/lib/workflows/get-progress";

export const metadata: Metadata = { title: "Progress" };
export const dynamic = "force-dynamic";

export default async function ProgressPage() {
  const viewer = await getForPage(() => requireViewer());
  const progress = await getForPage(() => getProgress(viewer, { studentId: viewer.userId }));
  return (
    <div className="page">
      <PageHeader title="Progress" lead="What your released debriefs add up to." />
      <div className="stack">
        {progress.plots === 0 ? (
          <EmptyState
            title="No debrief is released yet"
            action={<LinkButton href="/my-stones">Go to my stones</LinkButton>}
          >
            Once your instructor releases a debrief, it is added up here.
          </EmptyState>
        ) : (
          <ProgressBoard progress={progress} debriefHref="/debrief/" />
        )}
        <PracticeNote />
      </div>
    </div>
  );
}
