import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { PreviewNote } from "@/components/bench/preview-note";
import { ExerciseSection } from "@/components/my-stones/exercise-section";
import { PageHeader } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { previewMyExercise } from "@/lib/data/preview-exercise";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Preview as a student" };

/** The exercise as it stands in a student's own stones. */
export default async function PreviewPage({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exerciseId } = await params;
  const exercise = await getForPage(async () => previewMyExercise(await requireViewer(), exerciseId));
  return (
    <div className="page">
      <PreviewNote backHref={`/exercises/${exerciseId}`}>
        as a student who has begun nothing sees it now. No sitting is made and nothing is saved.
      </PreviewNote>
      <PageHeader title="My stones" />
      <ExerciseSection exercise={exercise} openSitting={null} />
      <PracticeNote />
    </div>
  );
}
