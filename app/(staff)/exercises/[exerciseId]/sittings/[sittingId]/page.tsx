import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { releaseDebriefsAction, withdrawReleaseAction } from "@/app/(staff)/exercises/actions";
import { getScoredGrid } from "@/app/(staff)/exercises/get-scored-grid";
import { getForPage } from "@/app/get-for-page";
import { Debrief } from "@/components/debrief/debrief";
import { BenchWatch } from "@/components/staff/bench-watch";
import { findNeighbours } from "@/components/staff/find-neighbours";
import { PlotDistance } from "@/components/staff/plot-distance";
import { SittingActions } from "@/components/staff/sitting-actions";
import { getBenchWatch } from "@/lib/data/get-bench-watch";
import { getDebrief } from "@/lib/data/get-debrief";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Review" };

interface Props {
  params: Promise<{ exerciseId: string; sittingId: string }>;
}

export default async function SittingPage({ params }: Props) {
  const { exerciseId, sittingId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const grid = await getForPage(() => getScoredGrid(viewer, exerciseId));
  const cell = grid.cells.find((one) => one.sittingId === sittingId);
  if (cell === undefined) notFound();
  const trail = [
    { href: "/exercises", label: "Exercises" },
    { href: `/exercises/${exerciseId}`, label: grid.exercise.title },
  ];
  const actions = (
    <SittingActions
      sittingId={sittingId}
      state={cell.state}
      exerciseHref={`/exercises/${exerciseId}`}
      neighbours={findNeighbours(grid, cell)}
      release={releaseDebriefsAction.bind(null, exerciseId)}
      withdraw={withdrawReleaseAction.bind(null, exerciseId)}
    />
  );
  if (cell.state === "scored" || cell.state === "released") {
    const view = await getForPage(() => getDebrief(viewer, sittingId));
    return (
      <>
        <Debrief key={sittingId} view={view} trail={trail} isOwn={false} actions={actions} />
        <div className="page-wide">
          <PlotDistance view={view} />
        </div>
      </>
    );
  }
  const watch = await getForPage(() => getBenchWatch(viewer, sittingId));
  return <BenchWatch key={sittingId} watch={watch} state={cell.state} trail={trail} actions={actions} />;
}
