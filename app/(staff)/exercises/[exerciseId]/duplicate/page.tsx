import type { Metadata } from "next";
import { duplicateExerciseAction } from "@/app/(staff)/exercises/actions";
import { getForPage } from "@/app/get-for-page";
import { DuplicateForm } from "@/components/staff/duplicate-form";
import panel from "@/components/staff/panel.module.css";
import { PageHeader } from "@/components/ui/page-header";
import { getReviewGrid } from "@/lib/data/get-review-grid";
import { listSections } from "@/lib/data/list-sections";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Duplicate an exercise" };

export default async function DuplicatePage({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exerciseId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const { exercise } = await getForPage(() => getReviewGrid(viewer, exerciseId));
  const sections = await getForPage(() => listSections(viewer));
  return (
    <div className="page">
      <PageHeader
        title="Duplicate the exercise"
        trail={[
          { href: "/exercises", label: "Exercises" },
          { href: `/exercises/${exerciseId}`, label: exercise.title },
        ]}
        lead="For another section or another term."
      />
      <section className={panel.narrow}>
        <DuplicateForm exercise={exercise} sections={sections} duplicate={duplicateExerciseAction} />
      </section>
    </div>
  );
}
