import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { Bench } from "@/components/bench/bench";
import { PreviewNote } from "@/components/bench/preview-note";
import { ShownPhotos } from "@/components/tray/shown-photos";
import { previewBench } from "@/lib/data/preview-exercise";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Preview of the bench" };
export const dynamic = "force-dynamic";

/** The bench of one stone as a student opens it. */
export default async function PreviewBenchPage({
  params,
}: {
  params: Promise<{ exerciseId: string; exerciseStoneId: string }>;
}) {
  const { exerciseId, exerciseStoneId } = await params;
  const { view, photos } = await getForPage(async () =>
    previewBench(await requireViewer(), exerciseId, exerciseStoneId),
  );
  return (
    <>
      <div className="page-wide" style={{ paddingBottom: 0 }}>
        <PreviewNote backHref={`/exercises/${exerciseId}`}>
          of the bench as a student opens it. Try whatever you like: no sitting is made and nothing is saved.
        </PreviewNote>
      </div>
      <Bench key={exerciseStoneId} view={view} isPreview />
      {photos.length > 0 && (
        <div className="page-wide">
          <ShownPhotos photos={photos} label={view.stone.label} />
        </div>
      )}
    </>
  );
}
