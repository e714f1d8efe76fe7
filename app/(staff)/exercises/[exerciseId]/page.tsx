import type { Metadata } from "next";
import {
  grantExtensionAction,
  grantExtraTimeAction,
  grantRetakeAction,
  listRetakeStonesAction,
  releaseDebriefsAction,
  withdrawReleaseAction,
} from "@/app/(staff)/exercises/actions";
import { getScoredGrid } from "@/app/(staff)/exercises/get-scored-grid";
import { getForPage } from "@/app/get-for-page";
import { PaperMenu } from "@/components/paper/paper-menu";
import { readQueueTerms } from "@/components/review/queue-address";
import { Allowances } from "@/components/staff/allowances";
import { ExerciseFacts } from "@/components/staff/exercise-facts";
import { ExportMenu } from "@/components/staff/export-menu";
import { ExtraTime } from "@/components/staff/extra-time";
import { OlderNote } from "@/components/staff/older-note";
import { ReviewGrid } from "@/components/staff/review-grid";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Exercise" };

interface Props {
  params: Promise<{ exerciseId: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function ExercisePage({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const grid = await getForPage(() => getScoredGrid(viewer, exerciseId));
  return (
    <div className="page-wide">
      <PageHeader
        title={grid.exercise.title}
        trail={[{ href: "/exercises", label: "Exercises" }]}
        lead={<ExerciseFacts exercise={grid.exercise} />}
        actions={
          <>
            <ExportMenu grid={grid} />
            <LinkButton href={`/exercises/${exerciseId}/watch`} variant="outline">
              Watch
            </LinkButton>
            <LinkButton href={`/exercises/${exerciseId}/preview`} variant="outline">
              Preview as a student
            </LinkButton>
            <PaperMenu label="Worksheets" address={`/api/exercises/${exerciseId}/worksheets.pdf`} />
            <LinkButton href={`/exercises/${exerciseId}/rubric`} variant="outline">
              Rubric
            </LinkButton>
            <LinkButton href={`/exercises/${exerciseId}/duplicate`} variant="outline">
              Duplicate
            </LinkButton>
            <LinkButton href={`/exercises/${exerciseId}/edit`} variant="outline">
              Change the exercise
            </LinkButton>
          </>
        }
      />
      <div className="stack">
        <OlderNote exerciseId={exerciseId} older={grid.older} openRescore={grid.openRescore} />
        {grid.students.length === 0 ? (
          <EmptyState title="Nobody is enrolled in this section yet">
            Ask a director to enrol students; they see the exercise as soon as they are in the section.
          </EmptyState>
        ) : (
          <ReviewGrid
            grid={grid}
            initialTerms={readQueueTerms(await searchParams)}
            release={releaseDebriefsAction.bind(null, exerciseId)}
            withdraw={withdrawReleaseAction.bind(null, exerciseId)}
          />
        )}
        {grid.students.length > 0 && (
          <Allowances
            grid={grid}
            extend={grantExtensionAction.bind(null, exerciseId)}
            listRetakeStones={listRetakeStonesAction.bind(null, exerciseId)}
            grantRetake={grantRetakeAction.bind(null, exerciseId)}
          />
        )}
        {grid.rules.minutesPerStone !== null && grid.students.length > 0 && (
          <ExtraTime
            minutesPerStone={grid.rules.minutesPerStone}
            students={grid.students}
            grant={grantExtraTimeAction.bind(null, exerciseId)}
          />
        )}
        <PracticeNote />
      </div>
    </div>
  );
}
