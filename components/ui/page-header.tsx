import Link from "next/link";
import type { ReactNode } from "react";
import classes from "@/components/ui/page-header.module.css";

export interface PageHeaderProps {
  title: ReactNode;
  /** The way back, outermost first. */
  trail?: readonly { href: string; label: string }[];
  /** One line under the title: what this is, in numbers or a sentence. */
  lead?: ReactNode;
  /** Buttons at the end of the line. */
  actions?: ReactNode;
}

/** The head of a page: where it stands, its name, its one line, its actions, and a graduated edge under them. */
export function PageHeader({ title, trail = [], lead, actions }: PageHeaderProps) {
  return (
    <div className={classes.root}>
      {trail.length > 0 && (
        <nav aria-label="Trail" className={`${classes.trail} no-print`}>
          <ol className={classes.trailList}>
            {trail.map(({ href, label }) => (
              <li key={href}>
                <Link href={href}>{label}</Link>
              </li>
            ))}
          </ol>
        </nav>
      )}
      <div className={classes.line}>
        <div className={classes.words}>
          <h1>{title}</h1>
          {lead !== undefined && <div className={classes.lead}>{lead}</div>}
        </div>
        {actions !== undefined && <div className={`${classes.actions} no-print`}>{actions}</div>}
      </div>
      <div className={classes.graduation} aria-hidden="true" />
    </div>
  );
}
