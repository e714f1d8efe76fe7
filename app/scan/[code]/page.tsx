import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { handOutAction, takeBackAction } from "@/app/(staff)/trays/out/actions";
import { getForPage } from "@/app/get-for-page";
import { StonePlace } from "@/components/tray/stone-place";
import { AppFrame } from "@/components/ui/app-frame";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { findMyScannedStone } from "@/lib/data/find-my-scanned-stone";
import { getScannedStone } from "@/lib/data/get-scanned-stone";
import { listHolders } from "@/lib/data/list-holders";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Label" };
export const dynamic = "force-dynamic";

/** Where a label's code leads: staff to where the stone is; a student to the check of a stone that is set for them. */
export default async function ScanPage({ params }: { params: Promise<{ code: string }> }) {
  const { code } = await params;
  const viewer = await getForPage(() => requireViewer());
  if (viewer.role === "student") {
    const own = await getForPage(() => findMyScannedStone(viewer, code));
    if (own !== null) redirect(`/check/${own}`);
    return (
      <AppFrame viewer={viewer}>
        <div className="page">
          <PageHeader title="Label" />
          <EmptyState
            title="This is no stone that is set for you"
            action={<LinkButton href="/my-stones">My stones</LinkButton>}
          >
            Look at the label once more. If you were handed this stone, tell your instructor.
          </EmptyState>
        </div>
      </AppFrame>
    );
  }
  const stone = await getForPage(() => getScannedStone(viewer, code));
  const holders = await getForPage(() => listHolders(viewer));
  return (
    <AppFrame viewer={viewer}>
      <div className="page">
        <PageHeader
          title={stone.label}
          trail={[
            { href: "/trays", label: "Trays" },
            { href: `/trays/${stone.trayId}`, label: stone.trayName },
          ]}
          lead={`${stone.trayName}, place ${stone.position}`}
          actions={
            <>
              <LinkButton href={`/trays/${stone.trayId}/check?stone=${stone.stoneId}`} variant="outline">
                Which stone is this?
              </LinkButton>
              <LinkButton href={`/trays/${stone.trayId}/stones/${stone.stoneId}`} variant="outline">
                Open the stone
              </LinkButton>
            </>
          }
        />
        <StonePlace {...stone} holders={holders} handOut={handOutAction} takeBack={takeBackAction} />
      </div>
    </AppFrame>
  );
}
