"use client";

import Link from "next/link";
import { usePathname } from "next/navigation";
import classes from "@/components/ui/app-frame.module.css";
import { NAV_LINKS } from "@/components/ui/nav-links";
import type { Role } from "@/lib/plot/staff-view";

/** The places of a role; the one that the page belongs to is marked. */
export function MainNav({ role }: { role: Role }) {
  const pathname = usePathname();
  return (
    <nav aria-label="Main" className={classes.nav}>
      <ul className={classes.navList}>
        {NAV_LINKS[role].map(({ href, label }) => {
          const here = pathname === href || pathname.startsWith(`${href}/`);
          return (
            <li key={href}>
              <Link href={href} className={classes.navLink} aria-current={here ? "page" : undefined}>
                {label}
              </Link>
            </li>
          );
        })}
      </ul>
    </nav>
  );
}
