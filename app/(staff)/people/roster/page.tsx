import type { Metadata } from "next";
import { createLinksAction, importRosterAction, planRosterAction } from "@/app/(staff)/people/actions";
import { getForPage } from "@/app/get-for-page";
import { RosterForm } from "@/components/staff/roster-form";
import { PageHeader } from "@/components/ui/page-header";
import { listPeople } from "@/lib/data/list-people";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Bring a roster in" };

export default async function RosterPage() {
  const viewer = await getForPage(() => requireViewer());
  // Asked only so that the page is not shown to whoever may not bring a roster in.
  await getForPage(() => listPeople(viewer));
  return (
    <div className="page">
      <PageHeader
        title="Bring a roster in"
        trail={[{ href: "/people", label: "People" }]}
        lead="Columns login, name, section, role and term; or a OneRoster export. What it would do is shown first."
      />
      <RosterForm plan={planRosterAction} importRoster={importRosterAction} createLinks={createLinksAction} />
    </div>
  );
}
