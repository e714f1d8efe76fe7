"use client";

import { MantineProvider } from "@mantine/core";
import { Notifications } from "@mantine/notifications";
import type { ReactNode } from "react";
import { resolveCssVariables, theme } from "@/components/ui/theme";

/** Theme and notifications for every page. */
export function Providers({ children }: { children: ReactNode }) {
  return (
    <MantineProvider theme={theme} cssVariablesResolver={resolveCssVariables} defaultColorScheme="auto">
      <Notifications position="bottom-right" autoClose={5000} containerWidth={380} />
      {children}
    </MantineProvider>
  );
}
