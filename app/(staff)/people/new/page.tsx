import type { Metadata } from "next";
import { createPersonAction } from "@/app/(staff)/people/actions";
import { getForPage } from "@/app/get-for-page";
import panel from "@/components/staff/panel.module.css";
import { PersonForm } from "@/components/staff/person-form";
import { PageHeader } from "@/components/ui/page-header";
import { listPeople } from "@/lib/data/list-people";
import { listSections } from "@/lib/data/list-sections";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Add a person" };

export default async function NewPersonPage() {
  const viewer = await getForPage(() => requireViewer());
  // Asked only so that the page is not shown to whoever may not add people.
  await getForPage(() => listPeople(viewer));
  const sections = await getForPage(() => listSections(viewer));
  return (
    <div className="page">
      <PageHeader title="Add a person" trail={[{ href: "/people", label: "People" }]} />
      <section className={panel.narrow}>
        <PersonForm sections={sections} create={createPersonAction} />
      </section>
    </div>
  );
}
