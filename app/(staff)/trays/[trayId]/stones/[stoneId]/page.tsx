import type { Metadata } from "next";
import {
  deletePhotoAction,
  orderPhotosAction,
  updatePhotoAction,
  updateStoneAction,
} from "@/app/(staff)/trays/[trayId]/stones/actions";
import { handOutAction, takeBackAction } from "@/app/(staff)/trays/out/actions";
import { getForPage } from "@/app/get-for-page";
import { ReferenceSummary } from "@/components/stone/reference-summary";
import { StoneForm } from "@/components/stone/stone-form";
import { PastHandOuts } from "@/components/tray/past-hand-outs";
import { PhotoStrip } from "@/components/tray/photo-strip";
import { StonePlace } from "@/components/tray/stone-place";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { getStone } from "@/lib/data/get-stone";
import { listHolders } from "@/lib/data/list-holders";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Stone" };

export default async function StonePage({ params }: { params: Promise<{ stoneId: string }> }) {
  const { stoneId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const stone = await getForPage(() => getStone(viewer, stoneId));
  const holders = await getForPage(() => listHolders(viewer));
  const referenceHref = `/trays/${stone.trayId}/stones/${stoneId}/reference`;
  return (
    <div className="page">
      <PageHeader
        title={stone.label}
        trail={[
          { href: "/trays", label: "Trays" },
          { href: `/trays/${stone.trayId}`, label: stone.trayName },
        ]}
        lead={<ReferenceSummary stone={stone} />}
        actions={
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
      </div>
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
  );
}
