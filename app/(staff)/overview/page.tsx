import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { OverviewBoard } from "@/components/staff/overview-board";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { getOverview } from "@/lib/data/get-overview";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Overview" };

const count = (value: number, one: string, many: string) => `${value} ${value === 1 ? one : many}`;

export default async function OverviewPage() {
  const viewer = await getForPage(() => requireViewer());
  const overview = await getForPage(() => getOverview(viewer));
  return (
    <div className="page">
      <PageHeader
        title="Overview"
        lead={`${count(overview.trays, "tray", "trays")} with ${count(overview.stones, "stone", "stones")}, ${count(overview.exercises.length, "exercise", "exercises")}${overview.out === 0 ? "" : `; ${count(overview.out, "stone", "stones")} out`}`}
        actions={overview.stones > 0 && <LinkButton href="/exercises/new">New exercise</LinkButton>}
      />
      <OverviewBoard overview={overview} />
    </div>
  );
}
