import { StatusBadge } from "@/components/ui/status-badge";
import { When } from "@/components/ui/when";
import type { StoneView } from "@/lib/plot/staff-view";

/** One line on where a stone's reference stands. */
export function ReferenceSummary({ stone }: { stone: StoneView }) {
  const newest = stone.versions.find(({ version }) => version === stone.referenceVersion);
  if (newest === undefined) {
    return (
      <StatusBadge tone="bad">
        No reference yet: it cannot be set in an exercise before it has one
      </StatusBadge>
    );
  }
  return (
    <span>
      Reference version {newest.version}: {newest.clarity},{" "}
      {newest.marks === 1 ? "1 mark" : `${newest.marks} marks`}, by {newest.authorName},{" "}
      <When iso={newest.createdAt} />
    </span>
  );
}
