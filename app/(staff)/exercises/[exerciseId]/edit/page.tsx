import type { Metadata } from "next";
import { updateExerciseAction } from "@/app/(staff)/exercises/actions";
import { listPickableTrays } from "@/app/(staff)/exercises/list-pickable-trays";
import { getForPage } from "@/app/get-for-page";
import { ExerciseForm } from "@/components/staff/exercise-form";
import { toExerciseDraft } from "@/components/staff/to-exercise-draft";
import { PageHeader } from "@/components/ui/page-header";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { listSections } from "@/lib/data/list-sections";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Change an exercise" };

export default async function EditExercisePage({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exerciseId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const grid = await getForPage(() => getReviewGrid(viewer, exerciseId));
  const sections = await getForPage(() => listSections(viewer));
  const trays = await getForPage(() => listPickableTrays(viewer));
  return (
    <div className="page">
      <PageHeader
        title="Change the exercise"
        trail={[
          { href: "/exercises", label: "Exercises" },
          { href: `/exercises/${exerciseId}`, label: grid.exercise.title },
        ]}
      />
      <ExerciseForm
        storageKey={`loupework:exercise:${viewer.userId}:${exerciseId}`}
        start={toExerciseDraft(grid)}
        revision={grid.revision}
        sections={sections}
        trays={trays}
        rubric={grid.rubric}
        rubricHref={`/exercises/${exerciseId}/rubric`}
        save={updateExerciseAction.bind(null, exerciseId)}
      />
    </div>
  );
}
