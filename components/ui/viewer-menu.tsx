"use client";

import { Button, Menu } from "@mantine/core";
import { ChevronDown, KeyRound, LogOut } from "lucide-react";
import Link from "next/link";
import { signOut } from "next-auth/react";
import { forgetAllDrafts } from "@/components/staff/kept-draft-store";
import classes from "@/components/ui/app-frame.module.css";
import type { Role } from "@/lib/plot/staff-view";

const ROLE_LABELS: Readonly<Record<Role, string>> = {
  student: "Student",
  instructor: "Instructor",
  director: "Director",
};

/** Who is signed in, and what they can do about it. */
export function ViewerMenu({ name, role }: { name: string; role: Role }) {
  return (
    <Menu position="bottom-end" width={230} shadow="md">
      <Menu.Target>
        <Button
          variant="subtle"
          size="sm"
          px="xs"
          className={classes.viewer}
          rightSection={<ChevronDown size={15} aria-hidden="true" />}
          aria-label={`${name}, ${ROLE_LABELS[role].toLowerCase()}: account`}
        >
          <span className={classes.viewerName}>{name}</span>
        </Button>
      </Menu.Target>
      <Menu.Dropdown>
        <Menu.Label>
          {name} · {ROLE_LABELS[role]}
        </Menu.Label>
        <Menu.Item component={Link} href="/account" leftSection={<KeyRound size={16} aria-hidden="true" />}>
          Change password
        </Menu.Item>
        <Menu.Item
          leftSection={<LogOut size={16} aria-hidden="true" />}
          onClick={() => {
            forgetAllDrafts();
            void signOut({ callbackUrl: "/sign-in" });
          }}
        >
          Sign out
        </Menu.Item>
      </Menu.Dropdown>
    </Menu>
  );
}
