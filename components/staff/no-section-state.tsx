import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import type { Role } from "@/lib/plot/staff-view";

/** Stands where an exercise cannot be set yet, since there is no section to set it for. */
export function NoSectionState({ role }: { role: Role }) {
  if (role !== "director") {
    return (
      <EmptyState title="You teach no section yet">
        An exercise is set for a section. Ask a director to put you in charge of one.
      </EmptyState>
    );
  }
  return (
    <EmptyState
      title="There is no section yet"
      action={<LinkButton href="/people/sections/new">Make a section</LinkButton>}
    >
      An exercise is set for a section: a group of students and those who teach them.
    </EmptyState>
  );
}
