/** Where each role can go from the top of any page. */
import type { Role } from "@/lib/plot/staff-view";

export interface NavLink {
  readonly href: string;
  readonly label: string;
}

const STAFF: readonly NavLink[] = [
  { href: "/overview", label: "Overview" },
  { href: "/trays", label: "Trays" },
  { href: "/exercises", label: "Exercises" },
  { href: "/sections", label: "Sections" },
  { href: "/watch", label: "Watch" },
];

export const NAV_LINKS: Readonly<Record<Role, readonly NavLink[]>> = {
  student: [
    { href: "/my-stones", label: "My stones" },
    { href: "/progress", label: "Progress" },
  ],
  instructor: STAFF,
  director: [
    ...STAFF,
    { href: "/program", label: "Program" },
    { href: "/people", label: "People" },
    { href: "/trail", label: "Trail" },
    { href: "/settings", label: "Settings" },
  ],
};

/** Where a role lands after signing in. */
export function getHomeHref(role: Role): string {
  return role === "student" ? "/my-stones" : "/overview";
}
