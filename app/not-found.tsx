import { LinkButton } from "@/components/ui/link-button";
import { LonePage } from "@/components/ui/lone-page";

export default function NotFound() {
  return (
    <LonePage
      title="Nothing here for you"
      lead="This page does not exist, or it is not yours to see. Nothing was changed."
      callout="?"
    >
      <div>
        <LinkButton href="/">Back to the start</LinkButton>
      </div>
    </LonePage>
  );
}
