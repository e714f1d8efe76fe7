import { Button } from "@mantine/core";
import Link from "next/link";
import classes from "@/components/staff/page-links.module.css";

/** Ways to the newer and the older page of a long list. Nothing for a single page. */
export function PageLinks({ page, pages, href }: { page: number; pages: number; href: string }) {
  if (pages <= 1) return null;
  return (
    <nav aria-label="Pages" className={classes.root}>
      {page > 1 && (
        <Button component={Link} href={`${href}?page=${page - 1}`} variant="outline" rel="prev">
          Newer
        </Button>
      )}
      <span className="muted">
        Page {page} of {pages}
      </span>
      {page < pages && (
        <Button component={Link} href={`${href}?page=${page + 1}`} variant="outline" rel="next">
          Older
        </Button>
      )}
    </nav>
  );
}
