import type { Metadata } from "next";
import { openSittingAction } from "@/app/(student)/my-stones/actions";
import { getForPage } from "@/app/get-for-page";
import { ExerciseSection } from "@/components/my-stones/exercise-section";
import { findNextStep } from "@/components/my-stones/find-next-step";
import { NextStepPanel } from "@/components/my-stones/next-step-panel";
import { sortByUrgency } from "@/components/my-stones/sort-by-urgency";
import { EmptyState } from "@/components/ui/empty-state";
import { PageHeader } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { listMyExercises } from "@/lib/data/list-my-exercises";
import { requireViewer } from "@/lib/data/require-viewer";
import { handInOverdue } from "@/lib/workflows/hand-in-overdue";

export const metadata: Metadata = { title: "My stones" };
export const dynamic = "force-dynamic";

export default async function MyStonesPage() {
  const exercises = await getForPage(async () => {
    const viewer = await requireViewer();
    await handInOverdue({ studentId: viewer.userId });
    return sortByUrgency(await listMyExercises(viewer));
  });
  return (
    <div className="page">
      <PageHeader title="My stones" />
      {exercises.length === 0 && (
        <EmptyState title="No stones are set for you yet">
          Once your instructor sets an exercise for your section, its stones stand here. If you expected some,
          ask whether you are enrolled.
        </EmptyState>
      )}
      <NextStepPanel step={findNextStep(exercises)} openSitting={openSittingAction} />
      {exercises.map((exercise) => (
        <ExerciseSection key={exercise.exerciseId} exercise={exercise} openSitting={openSittingAction} />
      ))}
      {exercises.length > 0 && <PracticeNote />}
    </div>
  );
}
