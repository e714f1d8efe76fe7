import type { Metadata } from "next";
import {
  giveUpSecondReadingAction,
  handInSecondReadingAction,
  saveSecondReadingAction,
  settleSecondReadingAction,
} from "@/app/(staff)/trays/[trayId]/stones/actions";
import { getForPage } from "@/app/get-for-page";
import { SecondReadingEditor } from "@/components/second-reading/second-reading-editor";
import { SettleBoard } from "@/components/second-reading/settle-board";
import { PageHeader } from "@/components/ui/page-header";
import { When } from "@/components/ui/when";
import { requireViewer } from "@/lib/data/require-viewer";
import { getSecondReading } from "@/lib/workflows/get-second-reading";

export const metadata: Metadata = { title: "Second reading" };

export default async function SecondReadingPage({ params }: { params: Promise<{ readingId: string }> }) {
  const { readingId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const reading = await getForPage(() => getSecondReading(viewer, readingId));
  const stoneHref = `/trays/${reading.trayId}/stones/${reading.stoneId}`;
  return (
    <div className="page-wide">
      <PageHeader
        title={`Second reading of ${reading.label}`}
        trail={[
          { href: "/trays", label: "Trays" },
          { href: `/trays/${reading.trayId}`, label: reading.trayName },
          { href: stoneHref, label: reading.label },
        ]}
        lead={
          reading.state === "drawing" ? (
            "Plot and grade what you see. The reference is shown to you once you have handed in."
          ) : (
            <>
              {reading.readerName}, handed in <When iso={reading.handedInAt} />, beside version{" "}
              {reading.againstVersion} by {reading.firstAuthorName}
            </>
          )
        }
      />
      {reading.state === "drawing" ? (
        <SecondReadingEditor
          reading={reading}
          userId={viewer.userId}
          save={saveSecondReadingAction.bind(null, readingId)}
          giveUp={giveUpSecondReadingAction.bind(null, readingId)}
          stoneHref={stoneHref}
          handIn={handInSecondReadingAction.bind(null, readingId)}
        />
      ) : (
        <SettleBoard
          reading={reading}
          referenceHref={`${stoneHref}/reference`}
          settle={settleSecondReadingAction.bind(null, readingId)}
        />
      )}
    </div>
  );
}
