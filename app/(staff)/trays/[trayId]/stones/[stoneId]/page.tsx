import type { Metadata } from "next";
import {
  deletePhotoAction,
  dismissSuggestionAction,
  orderPhotosAction,
  startSecondReadingAction,
  updatePhotoAction,
  updateStoneAction,
} from "@/app/(staff)/trays/[trayId]/stones/actions";

import { handOutAction, takeBackAction } from "@/app/(staff)/trays/out/actions";
import { getForPage } from "@/app/get-for-page";
import { EvidenceSection } from "@/components/evidence/evidence-section";
import { ReadingsPanel } from "@/components/second-reading/readings-panel";
import { ReferenceSummary } from "@/components/stone/reference-summary";
import { StoneForm } from "@/components/stone/stone-form";
import { PastHandOuts } from "@/components/tray/past-hand-outs";
import { PhotoStrip } from "@/components/tray/photo-strip";
import { StonePlace } from "@/components/tray/stone-place";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { getStone } from "@/lib/data/get-stone";
import { listHolders } from "@/lib/data/list-holders";
import { listSecondReadings } from "@/lib/data/list-second-readings";
import { requireViewer } from "@/lib/data/require-viewer";
import { getStoneEvidence } from "@/lib/workflows/get-stone-evidence";

export const metadata: Metadata = { title: "Stone" };

export default async function StonePage({ params }: { params: Promise<{ stoneId: string }> }) {
  const { stoneId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const stone = await getForPage(() => getStone(viewer, stoneId));
  const holders = await getForPage(() => listHolders(viewer));
  const readings = await getForPage(() => listSecondReadings(viewer, stoneId));
  const isBlind = readings.openReadingId !== null;
  const evidence = isBlind ? null : await getForPage(() => getStoneEvidence(viewer, stoneId));
  const referenceHref = `/trays/${stone.trayId}/stones/${stoneId}/reference`;
  return (
    <div className="page">
      <PageHeader
        title={stone.label}
        trail={[
          { href: "/trays", label: "Trays" },
          { href: `/trays/${stone.trayId}`, label: stone.trayName },
        ]}
        lead={
          isBlind ? (
            "Its reference is kept from you until you have handed your second reading in"
          ) : (
            <ReferenceSummary stone={stone} />
          )
        }
        actions={
          !isBlind &&
          (stone.mayEdit || stone.referenceVersion > 0) && (
            <LinkButton href={referenceHref} variant={stone.referenceVersion === 0 ? "filled" : "outline"}>
              {stone.referenceVersion === 0 ? "Draw the reference" : "Open the reference"}
            </LinkButton>
          )
        }
      />
      <div className="stack">
        <StonePlace
          stoneId={stoneId}
          label={stone.label}
          out={stone.out}
          holders={holders}
          handOut={handOutAction}
          takeBack={takeBackAction}
        />
        <PastHandOuts handOuts={stone.handOuts} />
        <PhotoStrip
          stoneId={stoneId}
          label={stone.label}
          photos={stone.photos}
          mayEdit={stone.mayEdit}
          update={updatePhotoAction}
          order={orderPhotosAction}
          remove={deletePhotoAction}
        />
        <StoneForm
          storageKey={`loupework:stone:${viewer.userId}:${stoneId}`}
          start={{ label: stone.label, body: stone.body }}
          revision={stone.revision}
          reference={stone.reference}
          characteristics={stone.characteristics}
          mayEdit={stone.mayEdit}
          save={updateStoneAction.bind(null, stoneId)}
        />
      </div>
      {evidence !== null && (
        <EvidenceSection
          stone={stone}
          evidence={evidence}
          userId={viewer.userId}
          dismiss={dismissSuggestionAction.bind(null, stoneId)}
        />
      )}
      <ReadingsPanel
        stoneHref={`/trays/${stone.trayId}/stones/${stoneId}`}
        readings={readings}
        start={startSecondReadingAction.bind(null, stoneId)}
      />
    </div>
  );
}
