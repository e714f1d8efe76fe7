import classes from "@/components/staff/page-links.module.css";
import { LinkButton } from "@/components/ui/link-button";

/** Ways to the newer and the older page of a long list. Nothing for a single page. */
export function PageLinks({ page, pages, href }: { page: number; pages: number; href: string }) {
  if (pages <= 1) return null;
  return (
    <nav aria-label="Pages" className={classes.root}>
      {page > 1 && (
        <LinkButton href={`${href}?page=${page - 1}`} variant="outline">
          Newer
        </LinkButton>
      )}
      <span className="muted">
        Page {page} of {pages}
      </span>
      {page < pages && (
        <LinkButton href={`${href}?page=${page + 1}`} variant="outline">
          Older
        </LinkButton>
      )}
    </nav>
  );
}
