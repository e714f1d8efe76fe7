import { EmptyState } from "@/components/ui/empty-state";
import { LinkButton } from "@/components/ui/link-button";
import { PageHeader } from "@/components/ui/page-header";

/** What stands in the frame for a page that does not exist or is not the viewer's; the two are never told apart. */
export function NotHere() {
  return (
    <div className="page">
      <PageHeader title="Nothing here for you" />
      <EmptyState
        title="This page does not exist, or it is not yours to see"
        action={<LinkButton href="/">Back to the start</LinkButton>}
      >
        Nothing was changed. If a colleague or your instructor sent you the link, ask whether you should have
        it.
      </EmptyState>
    </div>
  );
}
