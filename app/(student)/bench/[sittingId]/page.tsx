import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { Bench } from "@/components/bench/bench";
import { HandedIn } from "@/components/bench/handed-in";
import { ShownPhotos } from "@/components/tray/shown-photos";
import { getBench } from "@/lib/data/get-bench";
import { listShownPhotos } from "@/lib/data/list-shown-photos";
import { requireViewer } from "@/lib/data/require-viewer";
import { handInOverdue } from "@/lib/workflows/hand-in-overdue";

export const metadata: Metadata = { title: "Bench" };
export const dynamic = "force-dynamic";

export default async function BenchPage({ params }: { params: Promise<{ sittingId: string }> }) {
  const { sittingId } = await params;
  const view = await getForPage(async () => {
    const viewer = await requireViewer();
    await handInOverdue({ studentId: viewer.userId });
    return getBench(viewer, sittingId);
  });
  if (view.handedInAt !== null) return <HandedIn view={view} handedInAt={view.handedInAt} />;
  const photos = await getForPage(async () => listShownPhotos(await requireViewer(), sittingId));
  return (
    <>
      <Bench key={view.sittingId} view={view} />
      {photos.length > 0 && (
        <div className="page-wide">
          <ShownPhotos photos={photos} label={view.stone.label} />
        </div>
      )}
    </>
  );
}
