import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { Debrief } from "@/components/debrief/debrief";
import { getDebrief } from "@/lib/data/get-debrief";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Debrief" };
export const dynamic = "force-dynamic";

const TRAIL = [{ href: "/my-stones", label: "My stones" }];

export default async function DebriefPage({ params }: { params: Promise<{ sittingId: string }> }) {
  const { sittingId } = await params;
  const view = await getForPage(async () => getDebrief(await requireViewer(), sittingId));
  return <Debrief view={view} trail={TRAIL} isOwn />;
}
