import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { createStoneAction } from "@/app/(staff)/trays/[trayId]/stones/actions";
import { getForPage } from "@/app/get-for-page";
import { StoneForm } from "@/components/stone/stone-form";
import { PageHeader } from "@/components/ui/page-header";
import { getTray } from "@/lib/data/get-tray";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "New stone" };

export default async function NewStonePage({ params }: { params: Promise<{ trayId: string }> }) {
  const { trayId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const tray = await getForPage(() => getTray(viewer, trayId));
  if (!tray.mayEdit) notFound();
  return (
    <div className="page">
      <PageHeader
        title="New stone"
        trail={[
          { href: "/trays", label: "Trays" },
          { href: `/trays/${trayId}`, label: tray.name },
        ]}
        lead="Its reference is drawn once the stone is in the tray."
      />
      <StoneForm
        storageKey={`loupework:stone:${viewer.userId}:new:${trayId}`}
        start={null}
        revision={0}
        reference={null}
        mayEdit
        save={createStoneAction.bind(null, trayId)}
        nextHref={`/trays/${trayId}/stones`}
      />
    </div>
  );
}
