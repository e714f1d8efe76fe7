import type { ReactNode } from "react";
import { BrandMark } from "@/components/ui/brand-mark";
import { ClockRing } from "@/components/ui/clock-ring";
import classes from "@/components/ui/lone-page.module.css";
import { SchemeToggle } from "@/components/ui/scheme-toggle";

export interface LonePageProps {
  title: string;
  lead?: ReactNode;
  /** The number at the ring's callout. */
  callout?: string;
  children?: ReactNode;
}

/** A page outside the frame: signing in, the first start, nothing here, something failed. */
export function LonePage({ title, lead, callout = "1", children }: LonePageProps) {
  return (
    <div className={classes.root}>
      <header className={classes.header}>
        <div className={classes.brand}>
          <BrandMark size={26} />
          <span>Loupework</span>
        </div>
        <SchemeToggle />
      </header>
      <ClockRing label={callout} className={classes.ring} />
      <main className={classes.main}>
        <h1>{title}</h1>
        {lead !== undefined && <p className={classes.lead}>{lead}</p>}
        {children !== undefined && <div className={classes.body}>{children}</div>}
      </main>
    </div>
  );
}
