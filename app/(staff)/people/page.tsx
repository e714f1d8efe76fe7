import type { Metadata } from "next";
import {
  createLinksAction,
  erasePersonAction,
  resetPasswordAction,
  setPersonActiveAction,
} from "@/app/(staff)/people/actions";
import { getForPage } from "@/app/get-for-page";
import { PeopleTable } from "@/components/staff/people-table";
import { SectionsTable } from "@/components/staff/sections-table";
import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";
import { listPeople } from "@/lib/data/list-people";
import { listSections } from "@/lib/data/list-sections";
import { requireViewer } from "@/lib/data/require-viewer";

export const metadata: Metadata = { title: "People" };

export default async function PeoplePage() {
  const viewer = await getForPage(() => requireViewer());
  const people = await getForPage(() => listPeople(viewer));
  const sections = await getForPage(() => listSections(viewer));
  const newSection = (
    <LinkButton href="/people/sections/new" variant="outline">
      New section
    </LinkButton>
  );
  return (
    <div className="page-wide">
      <PageHeader
        title="People"
        lead="Accounts, sections and who is enrolled in them."
        actions={
          <>
            <LinkButton href="/people/roster" variant="outline">
              Bring a roster in
            </LinkButton>
            {newSection}
            <LinkButton href="/people/new">Add a person</LinkButton>
          </>
        }
      />
      <div className="stack" style={{ gap: "2rem" }}>
        <SectionsTable
          sections={sections}
          empty={
            <EmptyState title="No section yet" action={newSection}>
              A section is a group of students that exercises are set for. Make one, then enrol its students.
            </EmptyState>
          }
        />
        <PeopleTable
          people={people}
          viewerId={viewer.userId}
          setActive={setPersonActiveAction}
          resetPassword={resetPasswordAction}
          createLinks={createLinksAction}
          erase={erasePersonAction}
        />
      </div>
    </div>
  );
}
