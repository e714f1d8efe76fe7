import type { Metadata } from "next";
import { notFound } from "next/navigation";
import {
  acceptStrayAction,
  deleteCommentAction,
  overruleAction,
  setReleasedAction,
  undoOverruleAction,
  writeCommentAction,
} from "@/app/(staff)/exercises/[exerciseId]/sittings/actions";
import { releaseDebriefsAction, withdrawReleaseAction } from "@/app/(staff)/exercises/actions";
import { getScoredGrid } from "@/app/(staff)/exercises/get-scored-grid";
import { getForPage } from "@/app/get-for-page";
import { listQueue } from "@/components/review/list-queue";
import { readQueueTerms, toQueueQuery } from "@/components/review/queue-address";
import type { ReviewActions } from "@/components/review/review-actions";
import { ReviewDesk } from "@/components/review/review-desk";
import { BenchWatch } from "@/components/staff/bench-watch";
import { findNeighbours } from "@/components/staff/find-neighbours";
import { SittingActions } from "@/components/staff/sitting-actions";
import { getBenchWatch } from "@/lib/data/get-bench-watch";
import { getReview } from "@/lib/data/get-review";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Review" };

interface Props {
  params: Promise<{ exerciseId: string; sittingId: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const ACTIONS: ReviewActions = {
  overrule: overruleAction,
  undo: undoOverruleAction,
  writeComment: writeCommentAction,
  deleteComment: deleteCommentAction,
  acceptStray: acceptStrayAction,
  setReleased: setReleasedAction,
};

export default async function SittingPage({ params, searchParams }: Props) {
  const { exerciseId, sittingId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const grid = await getForPage(() => getScoredGrid(viewer, exerciseId));
  const cell = grid.cells.find(
    (one) => one.sittingId === sittingId || one.earlier.some((before) => before.sittingId === sittingId),
  );
  if (cell === undefined) notFound();
  const state = cell.earlier.find((one) => one.sittingId === sittingId)?.state ?? cell.state;
  const trail = [
    { href: "/exercises", label: "Exercises" },
    { href: `/exercises/${exerciseId}`, label: grid.exercise.title },
  ];
  const actions = (
    <SittingActions
      sittingId={sittingId}
      state={state}
      exerciseHref={`/exercises/${exerciseId}`}
      neighbours={findNeighbours(grid, cell)}
      release={releaseDebriefsAction.bind(null, exerciseId)}
      withdraw={withdrawReleaseAction.bind(null, exerciseId)}
    />
  );
  if (state === "scored" || state === "released") {
    const terms = readQueueTerms(await searchParams);
    return (
      <ReviewDesk
        initial={await getForPage(() => getReview(viewer, sittingId))}
        queue={listQueue(grid, terms.search, terms.order, terms.way)}
        exerciseHref={`/exercises/${exerciseId}`}
        exerciseTitle={grid.exercise.title}
        query={toQueueQuery(terms)}
        actions={ACTIONS}
      />
    );
  }
  const watch = await getForPage(() => getBenchWatch(viewer, sittingId));
  return <BenchWatch key={sittingId} watch={watch} state={state} trail={trail} actions={actions} />;
}
