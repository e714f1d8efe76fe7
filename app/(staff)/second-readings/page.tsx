import type { Metadata } from "next";
import { giveUpSecondReadingAction } from "@/app/(staff)/trays/[trayId]/stones/actions";
import { getForPage } from "@/app/get-for-page";
import { BlindReadings } from "@/components/second-reading/blind-readings";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { listBlindReadings } from "@/lib/data/list-blind-readings";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Second readings" };

export default async function SecondReadingsPage({
  searchParams,
}: {
  searchParams: Promise<{ kept?: string | string[] }>;
}) {
  const { kept } = await searchParams;
  const viewer = await getForPage(() => requireViewer());
  const readings = await getForPage(() => listBlindReadings(viewer));
  return (
    <div className="page">
      <PageHeader
        title={kept === undefined ? "Your second readings" : "Kept from you while you read blind"}
        lead={
          kept === undefined
            ? "Stones that you are plotting without their references."
            : "What you asked for tells of the reference of a stone that you are reading blind. Hand the reading in or give it up first."
        }
      />
      {readings.length === 0 ? (
        <EmptyState
          title="You are reading no stone blind"
          action={<LinkButton href="/trays">Trays</LinkButton>}
        >
          A second reading begins on the page of a stone: a colleague who has not seen its reference plots it.
        </EmptyState>
      ) : (
        <BlindReadings readings={readings} giveUp={giveUpSecondReadingAction} />
      )}
    </div>
  );
}
