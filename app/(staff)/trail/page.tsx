import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { PageLinks } from "@/components/staff/page-links";
import { TrailTable } from "@/components/staff/trail-table";
import { EmptyState } from "@/components/ui/empty-state";
import { PageHeader } from "@/components/ui/page-header";
import { listPeople } from "@/lib/data/list-people";
import { listTrail } from "@/lib/data/list-trail";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Trail" };

const PAGE_ROWS = 50;

export default async function TrailPage({ searchParams }: { searchParams: Promise<{ page?: string }> }) {
  const { page: typed = "1" } = await searchParams;
  const page = /^[1-9]\d{0,6}$/.test(typed) ? Number(typed) : 1;
  const viewer = await getForPage(() => requireViewer());
  const { rows, total } = await getForPage(() => listTrail(viewer, { page }));
  const people = await getForPage(() => listPeople(viewer));
  return (
    <div className="page">
      <PageHeader title="Trail" lead="Who changed what, newest first. Nothing here is ever altered." />
      {total === 0 ? (
        <EmptyState title="Nothing yet">Every change that somebody makes is noted here.</EmptyState>
      ) : (
        <div className="stack">
          <TrailTable rows={rows} people={people.map(({ userId, name }) => ({ userId, name }))} />
          <PageLinks page={page} pages={Math.ceil(total / PAGE_ROWS)} href="/trail" />
        </div>
      )}
    </div>
  );
}
