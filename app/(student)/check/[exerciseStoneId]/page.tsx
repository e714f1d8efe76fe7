import type { Metadata } from "next";
import { sendStoneCheckAction } from "@/app/(student)/check/actions";
import { getForPage } from "@/app/get-for-page";
import { StudentCheck } from "@/components/tray/student-check";
import { PageHeader } from "@/components/ui/page-header";
import { getStoneToCheck } from "@/lib/data/get-stone-to-check";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Is this the right stone?" };
export const dynamic = "force-dynamic";

export default async function StudentCheckPage({ params }: { params: Promise<{ exerciseStoneId: string }> }) {
  const { exerciseStoneId } = await params;
  const view = await getForPage(async () => getStoneToCheck(await requireViewer(), exerciseStoneId));
  return (
    <div className="page-wide">
      <PageHeader
        title={`Is this ${view.stone.label}?`}
        trail={[{ href: "/my-stones", label: "My stones" }]}
        lead="Plot what is easiest to see of the stone in hand; your instructor is told whether it fits the label."
      />
      <StudentCheck view={view} send={sendStoneCheckAction} />
    </div>
  );
}
