"use client";

import { ActionIcon, useComputedColorScheme, useMantineColorScheme } from "@mantine/core";
import { Moon, Sun } from "lucide-react";
import classes from "@/components/ui/app-frame.module.css";

/** One press between the light theme and the dark one for the grading room. The choice is kept in this browser. */
export function SchemeToggle() {
  const { setColorScheme } = useMantineColorScheme();
  const scheme = useComputedColorScheme("light", { getInitialValueInEffect: true });
  const dark = scheme === "dark";
  return (
    <ActionIcon
      variant="subtle"
      size={36}
      aria-label="Dark theme for the grading room"
      aria-pressed={dark}
      title={dark ? "Light theme" : "Dark theme for the grading room"}
      onClick={() => setColorScheme(dark ? "light" : "dark")}
    >
      <Moon size={18} aria-hidden="true" className={classes.whenLight} />
      <Sun size={18} aria-hidden="true" className={classes.whenDark} />
    </ActionIcon>
  );
}
