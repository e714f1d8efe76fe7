import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { TraysTable } from "@/components/staff/trays-table";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { listTrays } from "@/lib/data/list-trays";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Trays" };

export default async function TraysPage() {
  const viewer = await getForPage(() => requireViewer());
  const trays = await getForPage(() => listTrays(viewer));
  const newTray = <LinkButton href="/trays/new">New tray</LinkButton>;
  const bringIn = (
    <LinkButton href="/trays/import" variant="outline">
      Bring a set in
    </LinkButton>
  );
  return (
    <div className="page">
      <PageHeader
        title="Trays"
        lead="Named sets of practice stones that are handed out together."
        actions={
          trays.length > 0 && (
            <>
              <LinkButton href="/trays/out" variant="outline">
                Out now
              </LinkButton>
              {bringIn}
              {newTray}
            </>
          )
        }
      />
      {trays.length === 0 ? (
        <EmptyState
          title="No tray yet"
          action={
            <>
              {bringIn} {newTray}
            </>
          }
        >
          Make a tray and put your practice stones in it, or bring a set in from a file or the library.
        </EmptyState>
      ) : (
        <TraysTable trays={trays} />
      )}
    </div>
  );
}
