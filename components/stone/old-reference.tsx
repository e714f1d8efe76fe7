"use client";

import { useRouter } from "next/navigation";
import { PROPERTY_LABELS } from "@/components/forms/property-labels";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import { keepDraft } from "@/components/staff/kept-draft-store";
import panel from "@/components/staff/panel.module.css";
import { toReferenceDraft, toReferenceKey } from "@/components/stone/reference-draft";
import classes from "@/components/stone/reference-editor.module.css";
import { ConfirmButton } from "@/components/ui/confirm-button";
import { PracticeNote } from "@/components/ui/practice-note";
import { joinReferenceDrawings } from "@/lib/editor/reference-drawings";
import { GRADED_PROPERTIES } from "@/lib/plot/grades";
import type { StoneView } from "@/lib/plot/staff-view";
import type { Reference } from "@/lib/plot/stone";

export interface OldReferenceProps {
  stone: StoneView;
  version: number;
  reference: Reference;
  userId: string;
  referenceHref: string;
}

/** A saved version to look at, and the way to begin a new version from it. */
export function OldReference({ stone, version, reference, userId, referenceHref }: OldReferenceProps) {
  const router = useRouter();
  const begin = () => {
    const kept = keepDraft(toReferenceKey(userId, stone.stoneId), {
      keptAt: new Date().toISOString(),
      base: stone.referenceVersion,
      value: { ...toReferenceDraft(reference), note: `From version ${version}` },
    });
    if (kept) router.push(referenceHref);
    return kept;
  };
  return (
    <PlotEditor
      mode="reference"
      readOnly
      cut={stone.body.cut}
      proportions={stone.body.proportions}
      characteristics={stone.characteristics}
      initialMarks={joinReferenceDrawings(reference.marks, reference.decoys)}
      aside={
        <section className={classes.aside} aria-label="Grades of this version">
          <h2>Grades</h2>
          <dl className={panel.facts}>
            {GRADED_PROPERTIES.filter((property) => reference.grades[property] !== undefined).map(
              (property) => (
                <div key={property}>
                  <dt>{PROPERTY_LABELS[property]}</dt>
                  <dd>{reference.grades[property]}</dd>
                </div>
              ),
            )}
          </dl>
          <PracticeNote />
          {stone.mayEdit && version !== stone.referenceVersion && (
            <div>
              <ConfirmButton
                question={`Begin a new version from version ${version}?`}
                detail={
                  <p>
                    Its marks, decoys and grades are put in the editor, not saved yet. Unsaved work of yours
                    on this stone in this browser is replaced.
                  </p>
                }
                confirmLabel="Put it in the editor"
                onConfirm={begin}
              >
                Begin a new version from this one
              </ConfirmButton>
            </div>
          )}
        </section>
      }
    />
  );
}
