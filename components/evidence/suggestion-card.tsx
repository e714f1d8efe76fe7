"use client";

import { Button } from "@mantine/core";
import { useRouter } from "next/navigation";
import { addToDraft } from "@/components/evidence/add-to-draft";
import classes from "@/components/evidence/evidence.module.css";
import { listEvidenceWords, PROPOSAL_WORDS } from "@/components/evidence/suggestion-words";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import { findKeptDraft, keepDraft } from "@/components/staff/kept-draft-store";
import { parseReferenceDraft, toReferenceDraft, toReferenceKey } from "@/components/stone/reference-draft";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import { PROPOSALS, type Proposal, type Suggestion } from "@/lib/agreement/stone-evidence";
import type { StoneView } from "@/lib/plot/staff-view";

export interface SuggestionCardProps {
  suggestion: Suggestion;
  sign: string;
  /** Facet and clock, in words. */
  place: string;
  stone: StoneView;
  userId: string;
  isHighlighted: boolean;
  onHighlight: (key: string | null) => void;
  dismiss: (key: string) => Promise<ActionResult>;
}

/** One place that many students mark and the reference does not, its evidence, and what can be made of it. */
export function SuggestionCard(props: SuggestionCardProps) {
  const { suggestion, sign, place, stone, userId, isHighlighted, onHighlight, dismiss } = props;
  const router = useRouter();
  const refresh = useRefresh();
  const { run, pending, failure } = useAction(dismiss);
  const act = (as: Proposal) => {
    const key = toReferenceKey(userId, stone.stoneId);
    const kept = findKeptDraft(key, parseReferenceDraft);
    // Unsaved work on this reference is added to, with the version that it was begun on, so that a save still tells.
    const { base, value } = kept ?? {
      base: stone.referenceVersion,
      value: toReferenceDraft(stone.reference),
    };
    const isKept = keepDraft(key, {
      keptAt: new Date().toISOString(),
      base,
      value: addToDraft(value, suggestion, as),
    });
    if (isKept) router.push(`/trays/${stone.trayId}/stones/${stone.stoneId}/reference`);
  };
  const order = [suggestion.proposes, ...PROPOSALS.filter((one) => one !== suggestion.proposes)];
  return (
    <li
      className={classes.card}
      data-highlighted={isHighlighted}
      onPointerEnter={() => onHighlight(suggestion.key)}
      onPointerLeave={() => onHighlight(null)}
      onFocus={() => onHighlight(suggestion.key)}
      onBlur={() => onHighlight(null)}
    >
      <h4>
        <span className={classes.sign}>{sign}</span> {PROPOSAL_WORDS[suggestion.proposes].title}
      </h4>
      <p className="muted">
        {suggestion.view === "crown" ? "Crown" : "Pavilion"}, {place}
      </p>
      <ul className={classes.words}>
        {listEvidenceWords(suggestion).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {stone.mayEdit && (
        <div className={`${classes.actions} no-print`}>
          {order.map((as, index) => (
            <Button key={as} size="sm" variant={index === 0 ? "filled" : "outline"} onClick={() => act(as)}>
              {PROPOSAL_WORDS[as].act}
            </Button>
          ))}
          <Button
            size="sm"
            variant="subtle"
            loading={pending}
            onClick={async () => {
              if ((await run(suggestion.key)) !== null) refresh();
            }}
          >
            Not now
          </Button>
        </div>
      )}
      {failure !== null && <ErrorNote message={failure.message} faults={failure.faults} />}
    </li>
  );
}
