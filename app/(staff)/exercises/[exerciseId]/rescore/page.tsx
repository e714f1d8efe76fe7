import type { Metadata } from "next";
import {
  applyRescoreAction,
  discardRescoreAction,
  startRescoreAction,
} from "@/app/(staff)/exercises/actions";
import { getForPage } from "@/app/get-for-page";
import { RescoreBoard } from "@/components/staff/rescore-board";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { getRescore } from "@/lib/data/get-rescore";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Rescore" };

export default async function RescorePage({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exerciseId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const view = await getForPage(() => getRescore(viewer, exerciseId));
  return (
    <div className="page">
      <PageHeader
        title="Rescore"
        trail={[
          { href: "/exercises", label: "Exercises" },
          { href: `/exercises/${exerciseId}`, label: view.exerciseTitle },
        ]}
        lead={`By rubric version ${view.rubricVersion} and the newest reference of each stone.`}
        actions={
          <LinkButton href={`/exercises/${exerciseId}/rubric`} variant="outline">
            Rubric
          </LinkButton>
        }
      />
      <div className="stack">
        <RescoreBoard
          view={view}
          start={startRescoreAction.bind(null, exerciseId)}
          apply={applyRescoreAction.bind(null, exerciseId)}
          discard={discardRescoreAction.bind(null, exerciseId)}
        />
        <PracticeNote />
      </div>
    </div>
  );
}
