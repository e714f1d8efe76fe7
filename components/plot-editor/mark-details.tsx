"use client";

import { Button, Checkbox, SegmentedControl } from "@mantine/core";
import { Check, Trash2 } from "lucide-react";
import { useId } from "react";
import { CommittedInput } from "@/components/plot-editor/committed-input";
import { MarkPlaceFields } from "@/components/plot-editor/mark-place-fields";
import classes from "@/components/plot-editor/marks-table.module.css";
import { SubjectSelect } from "@/components/plot-editor/subject-select";
import type { CharacteristicsByName } from "@/components/plot-editor/subject-words";
import type { Editor } from "@/components/plot-editor/use-editor";
import { type EditorMark, isDecoy } from "@/lib/editor/drawn-mark";
import type { EditorMode } from "@/lib/editor/editor-command";
import { PROOF_KEYS } from "@/lib/editor/mark-commands";
import { toggleProof } from "@/lib/editor/toggle-proof";
import { type PlottedMark, PROOFS, type Proof, type ReferenceMark } from "@/lib/plot/mark";

interface MarkDetailsProps {
  readonly editor: Editor;
  readonly mark: EditorMark;
  readonly mode: EditorMode;
  readonly characteristics: CharacteristicsByName;
  readonly onRemoved: () => void;
}

const PROOF_LABELS: Readonly<Record<Proof, string>> = {
  wiped: "Wiped",
  tilted: "Tilted",
  regripped: "Regripped",
};
const NO_CONFIDENCE = "0";

interface FieldsProps<M> {
  readonly mark: M;
  readonly onReplace: (mark: EditorMark) => void;
}

/** How sure the student is, and what was done to make sure. */
function BenchFields({ mark, onReplace }: FieldsProps<PlottedMark>) {
  const confidenceId = useId();
  const { confidence, ...rest } = mark;
  return (
    <>
      <div>
        <div className={classes.label} id={confidenceId}>
          Confidence
        </div>
        <SegmentedControl
          fullWidth
          size="sm"
          classNames={{ root: classes.segments, indicator: classes.segmentChosen, label: classes.segment }}
          aria-labelledby={confidenceId}
          value={String(confidence ?? NO_CONFIDENCE)}
          data={[
            { value: NO_CONFIDENCE, label: "–" },
            ...["1", "2", "3", "4", "5"].map((value) => ({ value, label: value })),
          ]}
          onChange={(value) =>
            onReplace(value === NO_CONFIDENCE ? rest : { ...rest, confidence: Number(value) })
          }
        />
      </div>
      <fieldset className={classes.proofs}>
        <legend className={classes.label}>Made sure by</legend>
        {PROOFS.map((proof) => (
          <button
            key={proof}
            type="button"
            className={classes.proof}
            aria-pressed={mark.proofs?.includes(proof) ?? false}
            aria-keyshortcuts={PROOF_KEYS[proof]}
            onClick={() => onReplace(toggleProof(mark, proof))}
          >
            <Check size={15} aria-hidden="true" className={classes.proofSign} />
            {PROOF_LABELS[proof]}
            <span className={classes.proofKey} aria-hidden="true">
              {PROOF_KEYS[proof].toUpperCase()}
            </span>
          </button>
        ))}
      </fieldset>
    </>
  );
}

/** What a reference mark is worth and where it lies in the stone. */
function ReferenceFields({ mark, onReplace }: FieldsProps<ReferenceMark>) {
  const { weight, depth, decidesGrade, optional, ...rest } = mark;
  const kept = {
    ...(weight === undefined ? {} : { weight }),
    ...(depth === undefined ? {} : { depth }),
    ...(decidesGrade ? { decidesGrade } : {}),
    ...(optional ? { optional } : {}),
  };
  return (
    <>
      <div className={classes.fields}>
        <CommittedInput
          label="Weight"
          value={String(weight ?? 1)}
          onCommit={(text) => {
            const next = Number(text);
            if (text === "" || !(next > 0 && next <= 100)) return "Above 0, to 100";
            onReplace({ ...rest, ...kept, weight: next });
            return null;
          }}
        />
        <CommittedInput
          label="Depth, 0 to 1"
          value={depth === undefined ? "" : String(depth)}
          onCommit={(text) => {
            const { depth: _before, ...others } = kept;
            if (text === "") {
              onReplace({ ...rest, ...others });
              return null;
            }
            const next = Number(text);
            if (!(next >= 0 && next <= 1)) return "0 to 1, or empty";
            onReplace({ ...rest, ...others, depth: next });
            return null;
          }}
        />
      </div>
      <div className={classes.proofs}>
        <Checkbox
          iconColor="var(--lw-ground)"
          label="Decides the grade"
          checked={decidesGrade ?? false}
          onChange={(event) => {
            const { decidesGrade: _before, ...others } = kept;
            onReplace({ ...rest, ...others, ...(event.currentTarget.checked ? { decidesGrade: true } : {}) });
          }}
        />
        <Checkbox
          iconColor="var(--lw-ground)"
          label="Optional"
          checked={optional ?? false}
          onChange={(event) => {
            const { optional: _before, ...others } = kept;
            onReplace({ ...rest, ...others, ...(event.currentTarget.checked ? { optional: true } : {}) });
          }}
        />
      </div>
    </>
  );
}

/** Everything about one mark that can be changed, without the canvas. */
export function MarkDetails({ editor, mark, mode, characteristics, onRemoved }: MarkDetailsProps) {
  const onReplace = (next: EditorMark) => editor.dispatch({ kind: "replace", mark: next });
  return (
    <div className={classes.details}>
      <SubjectSelect mark={mark} characteristics={characteristics} onReplace={onReplace} />
      {mode === "bench" && !isDecoy(mark) && <BenchFields mark={mark} onReplace={onReplace} />}
      {mode === "reference" && !isDecoy(mark) && <ReferenceFields mark={mark} onReplace={onReplace} />}
      <MarkPlaceFields editor={editor} mark={mark} />
      <Button
        className={classes.remove}
        variant="subtle"
        color="red"
        size="compact-sm"
        leftSection={<Trash2 size={15} />}
        onClick={() => {
          editor.dispatch({ kind: "remove", id: mark.id });
          onRemoved();
        }}
      >
        Delete mark
      </Button>
    </div>
  );
}
