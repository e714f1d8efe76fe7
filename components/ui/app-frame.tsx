import Link from "next/link";
import type { ReactNode } from "react";
import classes from "@/components/ui/app-frame.module.css";
import { BrandMark } from "@/components/ui/brand-mark";
import { MainNav } from "@/components/ui/main-nav";
import { getHomeHref } from "@/components/ui/nav-links";
import { SchemeToggle } from "@/components/ui/scheme-toggle";
import { ViewerMenu } from "@/components/ui/viewer-menu";
import type { Role } from "@/lib/plot/staff-view";

export interface AppFrameProps {
  viewer: { name: string; role: Role };
  children: ReactNode;
}

/**
 * What stands around every page of someone who is signed in. The page inside brings its own `page` (reading width)
 * or `page-wide` (diagrams, grids) class. It authorises nothing: each page asks for itself.
 */
export function AppFrame({ viewer, children }: AppFrameProps) {
  return (
    <>
      <a href="#work" className={classes.skip}>
        Skip to the work
      </a>
      <header className={`${classes.header} no-print`}>
        <Link href={getHomeHref(viewer.role)} className={classes.brand}>
          <BrandMark />
          <span>Loupework</span>
        </Link>
        <MainNav role={viewer.role} />
        <div className={classes.tools}>
          <SchemeToggle />
          <ViewerMenu name={viewer.name} role={viewer.role} />
        </div>
      </header>
      <main id="work" tabIndex={-1} className={classes.main}>
        {children}
      </main>
    </>
  );
}
