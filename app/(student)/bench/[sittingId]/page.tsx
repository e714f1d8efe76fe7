import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { Bench } from "@/components/bench/bench";
import { HandedIn } from "@/components/bench/handed-in";
import { getBench } from "@/lib/data/get-bench";
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
  return <Bench key={view.sittingId} view={view} />;
}
