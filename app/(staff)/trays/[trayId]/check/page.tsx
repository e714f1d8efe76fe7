import type { Metadata } from "next";
import { checkStoneAction, settleStoneCheckAction } from "@/app/(staff)/trays/out/actions";
import { getForPage } from "@/app/get-for-page";
import { ChecksTable } from "@/components/tray/checks-table";
import { StoneCheck } from "@/components/tray/stone-check";
import { EmptyState } from "@/components/ui/empty-state";
import { PageHeader } from "@/components/ui/page-header";
import { getTray } from "@/lib/data/get-tray";
import { listStoneChecks } from "@/lib/data/list-stone-checks";
import { requireViewer } from "@/lib/data/require-viewer";
import { judgeStoneChecks } from "@/lib/workflows/judge-stone-checks";

export const metadata: Metadata = { title: "Hand-in check" };

interface CheckPageProps {
  params: Promise<{ trayId: string }>;
  searchParams: Promise<{ stone?: string }>;
}

export default async function CheckPage({ params, searchParams }: CheckPageProps) {
  const { trayId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const tray = await getForPage(() => getTray(viewer, trayId));
  // What a student sent and was cut off by an end of the server is worked out now.
  await judgeStoneChecks();
  const checks = await getForPage(() => listStoneChecks(viewer, trayId));
  const { stone } = await searchParams;
  const start = tray.stones.find(({ stoneId }) => stoneId === stone)?.stoneId ?? null;
  const hasReference = tray.stones.some(({ referenceVersion }) => referenceVersion > 0);
  return (
    <div className="page-wide">
      <PageHeader
        title="Which stone is this?"
        trail={[
          { href: "/trays", label: "Trays" },
          { href: `/trays/${trayId}`, label: tray.name },
        ]}
        lead="Plot what is easiest to see of the stone in hand, and read which stone of this tray it is."
      />
      <div className="stack">
        {hasReference ? (
          <StoneCheck tray={tray} startStoneId={start} check={checkStoneAction} />
        ) : (
          <EmptyState title="No reference to compare with">
            Draw the references of this tray’s stones first; then a few features tell which stone is in hand.
          </EmptyState>
        )}
        <ChecksTable checks={checks} settle={settleStoneCheckAction} />
      </div>
    </div>
  );
}
