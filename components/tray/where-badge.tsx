import { StatusBadge } from "@/components/ui/status-badge";
import { When } from "@/components/ui/when";
import type { HandOutView } from "@/lib/plot/hand-out";

/** Where a stone is: in its tray, or with whom since when, and whether it is overdue. */
export function WhereBadge({ out }: { out: HandOutView | null }) {
  if (out === null) return <StatusBadge tone="idle">In the tray</StatusBadge>;
  return (
    <StatusBadge tone={out.isOverdue ? "bad" : "active"}>
      {out.isSeat ? `At ${out.holder}` : `With ${out.holder}`}, <When iso={out.handedOutAt} show="relative" />
      {out.isOverdue && " – overdue"}
    </StatusBadge>
  );
}

/** The same as text, to sort, search and export by. */
export function toWhereWords(out: HandOutView | null): string {
  if (out === null) return "In the tray";
  return `${out.isSeat ? "At" : "With"} ${out.holder}${out.isOverdue ? ", overdue" : ""}`;
}
