"use client";

import { Button, Group } from "@mantine/core";
import { LonePage } from "@/components/ui/lone-page";

/** What a page shows when it could not be made. Nothing of the cause is sent to the browser but a reference to the log. */
export default function ErrorPage({
  error,
  reset,
}: {
  error: Error & { digest?: string };
  reset: () => void;
}) {
  return (
    <LonePage
      title="This page could not be made"
      lead="Something failed on the server. Everything that was saved is still saved. Try again; if it keeps failing, tell whoever runs this server."
      callout="!"
    >
      {error.digest !== undefined && (
        <p className="muted">
          Reference for the server’s log: <code>{error.digest}</code>
        </p>
      )}
      <Group gap="sm">
        <Button onClick={reset}>Try again</Button>
        <Button variant="outline" component="a" href="/">
          Back to the start
        </Button>
      </Group>
    </LonePage>
  );
}
