import { Button } from "@mantine/core";
import Link from "next/link";
import { LonePage } from "@/components/ui/lone-page";

export default function NotFound() {
  return (
    <LonePage
      title="Nothing here for you"
      lead="This page does not exist, or it is not yours to see. Nothing was changed."
      callout="?"
    >
      <div>
        <Button component={Link} href="/">
          Back to the start
        </Button>
      </div>
    </LonePage>
  );
}
