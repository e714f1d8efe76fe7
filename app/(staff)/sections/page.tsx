import type { Metadata } from "next";
import { getForPage } from "@/app/get-for-page";
import { ReportSectionsTable } from "@/components/section/report-sections-table";
import { NoSectionState } from "@/components/staff/no-section-state";
import { PageHeader } from "@/components/ui/page-header";
import { listSections } from "@/lib/data/list-sections";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Sections" };

export default async function SectionsPage() {
  const viewer = await getForPage(() => requireViewer());
  const sections = await getForPage(() => listSections(viewer));
  return (
    <div className="page">
      <PageHeader title="Sections" lead="How each section agrees with its references." />
      <ReportSectionsTable sections={sections} empty={<NoSectionState role={viewer.role} />} />
    </div>
  );
}
