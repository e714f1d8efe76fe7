import { Eye } from "lucide-react";
import Link from "next/link";
import type { ReactNode } from "react";
import classes from "@/components/bench/preview-note.module.css";

/** Says clearly, over everything else, that what follows is what a student would see. */
export function PreviewNote({ backHref, children }: { backHref: string; children: ReactNode }) {
  return (
    <aside className={classes.root} aria-label="Preview">
      <Eye size={20} aria-hidden="true" />
      <p>
        <strong>Preview</strong> {children}
      </p>
      <Link href={backHref}>Leave the preview</Link>
    </aside>
  );
}
