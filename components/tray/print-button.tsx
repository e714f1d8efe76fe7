"use client";

import { Button } from "@mantine/core";
import { Printer } from "lucide-react";

/** Opens the browser's own print dialog. */
export function PrintButton() {
  return (
    <Button leftSection={<Printer size={16} aria-hidden="true" />} onClick={() => window.print()}>
      Print
    </Button>
  );
}
