import { Button } from "@mantine/core";
import type { Metadata } from "next";
import { handOutAction, takeBackAction } from "@/app/(staff)/trays/out/actions";
import { getForPage } from "@/app/get-for-page";
import { PaperMenu } from "@/components/paper/paper-menu";
import { TrayStones } from "@/components/tray/tray-stones";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { PracticeNote } from "@/components/ui/practice-note";
import { getTray } from "@/lib/data/get-tray";
import { listHolders } from "@/lib/data/list-holders";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Tray" };

export default async function TrayPage({ params }: { params: Promise<{ trayId: string }> }) {
  const { trayId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const tray = await getForPage(() => getTray(viewer, trayId));
  const holders = await getForPage(() => listHolders(viewer));
  const hasStones = tray.stones.length > 0;
  const addStone = <LinkButton href={`/trays/${trayId}/stones/new`}>Add a stone</LinkButton>;
  return (
    <div className="page-wide">
      <PageHeader
        title={tray.name}
        trail={[{ href: "/trays", label: "Trays" }]}
        lead={tray.notes === "" ? undefined : tray.notes}
        actions={
          <>
            {hasStones && (
              <>
                <LinkButton href={`/trays/${trayId}/check`} variant="outline">
                  Which stone is this?
                </LinkButton>
                <LinkButton href={`/trays/${trayId}/labels`} variant="outline">
                  Labels
                </LinkButton>
                <Button component="a" variant="outline" href={`/api/trays/${trayId}/set.json`} download>
                  Export the set
                </Button>
                <PaperMenu label="Worksheets" address={`/api/trays/${trayId}/worksheets.pdf`} />
              </>
            )}
            {tray.mayEdit && (
              <>
                <LinkButton href={`/trays/import?into=${trayId}`} variant="outline">
                  Bring a set in
                </LinkButton>
                <LinkButton href={`/trays/${trayId}/edit`} variant="outline">
                  Name and notes
                </LinkButton>
              </>
            )}
            {tray.mayEdit && hasStones && addStone}
          </>
        }
      />
      <div className="stack">
        {!hasStones ? (
          <EmptyState title="No stone in this tray yet" action={tray.mayEdit ? addStone : undefined}>
            {tray.mayEdit
              ? "Add the first one: its label, its cut and its proportions. Its reference is drawn after that."
              : "Only the tray’s owner or a director can put stones in it."}
          </EmptyState>
        ) : (
          <>
            <TrayStones tray={tray} holders={holders} handOut={handOutAction} takeBack={takeBackAction} />
            <PracticeNote />
          </>
        )}
      </div>
    </div>
  );
}
