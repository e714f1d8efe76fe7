import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { saveReferenceAction } from "@/app/(staff)/trays/[trayId]/stones/actions";
import { getForPage } from "@/app/get-for-page";
import { TouchedNote } from "@/components/staff/older-note";
import { OldReference } from "@/components/stone/old-reference";
import { ReferenceEditor } from "@/components/stone/reference-editor";
import { ReferenceSummary } from "@/components/stone/reference-summary";
import { ReferenceVersions } from "@/components/stone/reference-versions";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { getStone } from "@/lib/data/get-stone";
import { listTouchedExercises } from "@/lib/data/list-touched-exercises";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Reference" };

export default async function ReferencePage({ params }: { params: Promise<{ stoneId: string }> }) {
  const { stoneId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const stone = await getForPage(() => getStone(viewer, stoneId));
  if (stone.openReadingId !== null) redirect("/second-readings?kept=1");
  const touched = await getForPage(() => listTouchedExercises(viewer, stoneId));
  const stoneHref = `/trays/${stone.trayId}/stones/${stoneId}`;
  return (
    <div className="page-wide">
      <PageHeader
        title={`Reference of ${stone.label}`}
        trail={[
          { href: "/trays", label: "Trays" },
          { href: `/trays/${stone.trayId}`, label: stone.trayName },
          { href: stoneHref, label: stone.label },
        ]}
        lead={<ReferenceSummary stone={stone} />}
        actions={
          <LinkButton href={stoneHref} variant="outline">
            Cut and proportions
          </LinkButton>
        }
      />
      <h2 className="visually-hidden">Marks and decoys</h2>
      <div className="stack">
        <TouchedNote exercises={touched} />
        {stone.mayEdit ? (
          <ReferenceEditor
            stone={stone}
            userId={viewer.userId}
            save={saveReferenceAction.bind(null, stoneId)}
            touched={<TouchedNote exercises={touched} />}
          />
        ) : stone.reference === null ? (
          <EmptyState title="No reference yet">
            Only the tray’s owner or a director can draw this stone’s reference.
          </EmptyState>
        ) : (
          <OldReference
            stone={stone}
            version={stone.referenceVersion}
            reference={stone.reference}
            userId={viewer.userId}
            referenceHref={`${stoneHref}/reference`}
          />
        )}
        {stone.versions.length > 0 && <ReferenceVersions versions={stone.versions} stoneHref={stoneHref} />}
      </div>
    </div>
  );
}
