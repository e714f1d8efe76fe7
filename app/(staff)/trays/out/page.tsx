import type { Metadata } from "next";
import { handOutAction, scanAction, takeBackAction } from "@/app/(staff)/trays/out/actions";
import { getForPage } from "@/app/get-for-page";
import { OutTable } from "@/components/tray/out-table";
import { ScanDesk } from "@/components/tray/scan-desk";
import { PageHeader } from "@/components/ui/page-header";
import { listHolders } from "@/lib/data/list-holders";
import { listOut } from "@/lib/data/list-out";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Out now" };

export default async function OutPage() {
  const viewer = await getForPage(() => requireViewer());
  const rows = await getForPage(() => listOut(viewer));
  const holders = await getForPage(() => listHolders(viewer));
  const overdue = rows.filter(({ isOverdue }) => isOverdue).length;
  const stones = rows.length === 1 ? "1 stone is out" : `${rows.length} stones are out`;
  return (
    <div className="page">
      <PageHeader
        title="Out now"
        trail={[{ href: "/trays", label: "Trays" }]}
        lead={`${stones}, ${overdue === 0 ? "none overdue" : `${overdue} overdue`}`}
      />
      <div className="stack">
        <ScanDesk holders={holders} scan={scanAction} handOut={handOutAction} takeBack={takeBackAction} />
        <OutTable rows={rows} />
      </div>
    </div>
  );
}
