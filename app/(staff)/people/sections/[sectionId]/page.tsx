import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { enrolStudentsAction } from "@/app/(staff)/people/actions";
import { getForPage } from "@/app/get-for-page";
import { EnrolForm } from "@/components/staff/enrol-form";
import panel from "@/components/staff/panel.module.css";
import { EmptyState } from "@/components/ui/empty-state";
import { PageHeader } from "@/components/ui/page-header";
import { listPeople } from "@/lib/data/list-people";
import { listSections } from "@/lib/data/list-sections";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "Section" };

export default async function SectionPage({ params }: { params: Promise<{ sectionId: string }> }) {
  const { sectionId } = await params;
  const viewer = await getForPage(() => requireViewer());
  const sections = await getForPage(() => listSections(viewer));
  const section = sections.find((one) => one.sectionId === sectionId);
  if (section === undefined) notFound();
  const people = await getForPage(() => listPeople(viewer));
  const isIn = ({ sections: names }: (typeof people)[number]) => names.includes(section.name);
  const students = people.filter(({ role }) => role === "student");
  const enrolled = students.filter(isIn);
  return (
    <div className="page">
      <PageHeader
        title={section.name}
        trail={[{ href: "/people", label: "People" }]}
        lead={`${section.term}. ${section.instructors.length === 0 ? "Nobody teaches it yet." : `Taught by ${section.instructors.join(", ")}.`}`}
      />
      <div className={panel.two}>
        <section className={panel.root}>
          <h2>Enrolled ({section.students})</h2>
          {enrolled.length === 0 ? (
            <EmptyState title="Nobody is enrolled yet">Choose students beside this.</EmptyState>
          ) : (
            <ul className={panel.choices}>
              {enrolled.map(({ userId, name, active }) => (
                <li key={userId}>
                  {name} {!active && <span className="muted">(deactivated)</span>}
                </li>
              ))}
            </ul>
          )}
        </section>
        <section className={panel.root}>
          <h2>Enrol students</h2>
          <EnrolForm
            students={students.filter((student) => student.active && !isIn(student))}
            enrol={enrolStudentsAction.bind(null, sectionId)}
          />
        </section>
      </div>
    </div>
  );
}
