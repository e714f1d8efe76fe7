import type { Metadata } from "next";
import { importSetAction, planSetImportAction } from "@/app/(staff)/trays/actions";
import { getForPage } from "@/app/get-for-page";
import { ImportSetForm } from "@/components/staff/import-set-form";
import { PageHeader } from "@/components/ui/page-header";
import { listTrays } from "@/lib/data/list-trays";
import { requireViewer } from "@/lib/data/require-viewer";
import { listLibrarySets } from "@/lib/workflows/list-library-sets";

export const metadata: Metadata = { title: "Bring a set in" };

export default async function ImportSetPage({ searchParams }: { searchParams: Promise<{ into?: string }> }) {
  const { into } = await searchParams;
  const viewer = await getForPage(() => requireViewer());
  const trays = await getForPage(() => listTrays(viewer));
  const library = await getForPage(async () => listLibrarySets(viewer));
  return (
    <div className="page">
      <PageHeader
        title="Bring a set in"
        trail={[{ href: "/trays", label: "Trays" }]}
        lead="What it would make or change is shown first. Then all of it is done, or nothing."
      />
      <ImportSetForm
        library={library.map((set) => ({
          title: set.title,
          notes: set.notes ?? "",
          stones: set.stones.length,
          json: set,
        }))}
        trays={trays.map(({ trayId, name }) => ({ trayId, name }))}
        into={trays.some(({ trayId }) => trayId === into) ? (into ?? null) : null}
        plan={planSetImportAction}
        importSet={importSetAction}
      />
    </div>
  );
}
