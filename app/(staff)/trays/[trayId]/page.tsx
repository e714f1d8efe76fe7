import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { TrayStonesTable } from "@/components/staff/tray-stones-table";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { getTray } from "@/lib/data/get-tray";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Tray" };

export default async function TrayPage({ params }: { params: Promise<{ trayId: string }> }) {
  const { trayId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const tray = await getForPage(() => getTray(viewer, trayId));
  const addStone = <LinkButton href={`/trays/${trayId}/stones/new`}>Add a stone</LinkButton>;
  return (
    <div className="page">
      <PageHeader
        title={tray.name}
        trail={[{ href: "/trays", label: "Trays" }]}
        lead={tray.notes === "" ? undefined : tray.notes}
        actions={
          tray.mayEdit && (
            <>
              <LinkButton href={`/trays/${trayId}/edit`} variant="outline">
                Name and notes
              </LinkButton>
              {tray.stones.length > 0 && addStone}
            </>
          )
        }
      />
      <div className="stack">
        {tray.stones.length === 0 ? (
          <EmptyState title="No stone in this tray yet" action={tray.mayEdit ? addStone : undefined}>
            {tray.mayEdit
              ? "Add the first one: its label, its cut and its proportions. Its reference is drawn after that."
              : "Only the tray’s owner or a director can put stones in it."}
          </EmptyState>
        ) : (
          <>
            <TrayStonesTable trayId={trayId} trayName={tray.name} stones={tray.stones} />
            <PracticeNote />
          </>
        )}
      </div>
    </div>
  );
}
