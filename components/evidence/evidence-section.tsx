import { DetectionChart } from "@/components/evidence/detection-chart";
import classes from "@/components/evidence/evidence.module.css";
import { StoneEvidenceBoard } from "@/components/evidence/stone-evidence-board";
import type { ActionResult } from "@/components/forms/action-result";
import { EmptyState } from "@/components/ui/empty-state";
import { When } from "@/components/ui/when";
import type { StoneEvidence } from "@/lib/agreement/stone-evidence";
import type { StoneView } from "@/lib/plot/staff-view";

export interface EvidenceSectionProps {
  stone: StoneView;
  evidence: StoneEvidence;
  userId: string;
  dismiss: (key: string) => Promise<ActionResult>;
}

/** What students' plots say of a stone, on its page. */
export function EvidenceSection({ stone, evidence, userId, dismiss }: EvidenceSectionProps) {
  const { students, firstAt, lastAt } = evidence;
  return (
    <section id="students" className={classes.root} aria-labelledby="students-title">
      <div>
        <h2 id="students-title">What students mark on it</h2>
        {firstAt !== null && lastAt !== null && (
          <p className="muted">
            {students === 1 ? "1 student" : `${students} students`} of every section, each by the first
            hand-in on this stone (later ones know the debrief), from <When iso={firstAt} /> to{" "}
            <When iso={lastAt} />.
          </p>
        )}
      </div>
      {students === 0 ? (
        <EmptyState title="Nobody has handed this stone in yet">
          Set it in an exercise. Once plots are handed in and scored, they are laid over the reference here.
        </EmptyState>
      ) : (
        <StoneEvidenceBoard
          stone={stone}
          evidence={evidence}
          userId={userId}
          dismiss={dismiss}
          detection={
            stone.reference !== null && (
              <DetectionChart label={stone.label} evidence={evidence} reference={stone.reference} />
            )
          }
        />
      )}
    </section>
  );
}
