import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { ExercisesTable } from "@/components/staff/exercises-table";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { listExercises } from "@/lib/data/list-exercises";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Exercises" };

export default async function ExercisesPage() {
  const viewer = await getForPage(() => requireViewer());
  const exercises = await getForPage(() => listExercises(viewer));
  const newExercise = <LinkButton href="/exercises/new">New exercise</LinkButton>;
  return (
    <div className="page">
      <PageHeader
        title="Exercises"
        lead="Stones set for a section, with dates and rules."
        actions={exercises.length > 0 && newExercise}
      />
      {exercises.length === 0 ? (
        <EmptyState title="No exercise yet" action={newExercise}>
          Choose a section, a date, and stones that have a reference.
        </EmptyState>
      ) : (
        <ExercisesTable exercises={exercises} />
      )}
    </div>
  );
}
