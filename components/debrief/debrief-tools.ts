import type { ReactNode } from "react";
import type { DebriefRow } from "@/components/debrief/debrief-row";
import type { GradedProperty } from "@/lib/plot/grades";

/** What whoever reviews a debrief may do on it, in place of what a student reads there. */
export interface DebriefTools {
  renderNotes: (row: DebriefRow) => ReactNode;
  renderGradeTool: (property: GradedProperty) => ReactNode;
  /** Overrules and comments on the whole. */
  panel: ReactNode;
}
