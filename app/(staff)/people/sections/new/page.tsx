import type { Metadata } from "next";
import { createSectionAction } from "@/app/(staff)/people/actions";
import { getForPage } from "@/app/get-for-page";
import panel from "@/components/staff/panel.module.css";
import { SectionForm } from "@/components/staff/section-form";
import { PageHeader } from "@/components/ui/page-header";
import { listPeople } from "@/lib/data/list-people";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "New section" };

export default async function NewSectionPage() {
  const viewer = await getForPage(() => requireViewer());
  const people = await getForPage(() => listPeople(viewer));
  return (
    <div className="page">
      <PageHeader title="New section" trail={[{ href: "/people", label: "People" }]} />
      <section className={panel.narrow}>
        <SectionForm people={people} create={createSectionAction} />
      </section>
    </div>
  );
}
