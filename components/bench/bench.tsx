"use client";

import { Modal } from "@mantine/core";
import { useDisclosure } from "@mantine/hooks";
import { useMemo, useRef, useState } from "react";
import classes from "@/components/bench/bench.module.css";
import { BenchHeader } from "@/components/bench/bench-header";
import { BenchNotes } from "@/components/bench/bench-notes";
import { DottingNote } from "@/components/bench/dotting-note";
import { GradesPanel } from "@/components/bench/grades-panel";
import { HandInButton } from "@/components/bench/hand-in-button";
import { listOpenPoints } from "@/components/bench/list-open-points";
import { PREVIEW_HAND_IN } from "@/components/bench/open-preview-saving";
import { PreparationCard } from "@/components/bench/preparation-card";
import { SaveNotice } from "@/components/bench/save-notice";
import { SaveStatus } from "@/components/bench/save-status";
import { TimeLeft } from "@/components/bench/time-left";
import { type Saving, useSaveClient } from "@/components/bench/use-save-client";
import { useTimeLeft } from "@/components/bench/use-time-left";
import { PlotEditor } from "@/components/plot-editor/plot-editor";
import type { BenchHandle } from "@/components/plot-editor/plot-editor-props";
import { useRefresh } from "@/components/ui/use-refresh";
import { findBurstUnderWay } from "@/lib/plot/find-dotting";
import { PREPARATION_STEPS } from "@/lib/plot/sitting-event";
import type { BenchView } from "@/lib/plot/student-view";

/** The card stands before the first mark: always while it must be confirmed, else until plotting is begun. */
function needsPreparation(view: BenchView, { sitting }: Saving["state"], isBegun: boolean): boolean {
  const { preparation } = view.rules;
  if (preparation === "off" || sitting.plot.marks.length > 0) return false;
  const isConfirmed = PREPARATION_STEPS.every((step) => sitting.prepared[step] !== undefined);
  if (preparation === "required" && !isConfirmed) return true;
  return !isBegun;
}

/** A sitting: preparation, the two views, the table of marks, the grades, and handing in. A preview saves nothing. */
export function Bench({ view, isPreview = false }: { view: BenchView; isPreview?: boolean }) {
  const refresh = useRefresh();
  const saving = useSaveClient(view, isPreview);
  const { state, client, clock } = saving;
  const { sitting } = state;
  const [isBegun, setBegun] = useState(Object.keys(view.prepared).length > 0);
  const [dismissed, setDismissed] = useState<string | null>(null);
  const [preparationShown, preparation] = useDisclosure(false);
  const burst = useMemo(
    () => findBurstUnderWay(sitting.plot.marks, view.rules.dotting),
    [sitting.plot.marks, view.rules.dotting],
  );
  const openPoints = useMemo(
    () => listOpenPoints(sitting, view.rules, view.characteristics),
    [sitting, view.rules, view.characteristics],
  );
  const editor = useRef<BenchHandle>(null);
  const leftMs = useTimeLeft(saving, () => refresh());
  const wholeMs = saving.endsAt === null ? 0 : Date.parse(saving.endsAt) - Date.parse(view.openedAt);
  const [clockAheadMs] = useState(() => Date.parse(view.readAt) - Date.now());

  const card = (
    <PreparationCard
      prepared={sitting.prepared}
      isRequired={view.rules.preparation === "required"}
      canWrite={state.canWrite}
      landmark={view.stone.landmark}
      schoolRules={view.rules.schoolRules}
      onStep={(step, done) => client?.record({ kind: "prepared", step, done })}
      onStart={() => {
        setBegun(true);
        preparation.close();
        document.getElementById("bench-title")?.focus();
      }}
    />
  );
  const handIn = (
    <HandInButton
      label={view.stone.label}
      markCount={sitting.plot.marks.length}
      openPoints={openPoints}
      areProofsRequired={view.rules.areProofsRequired}
      onGoTo={(markId) => editor.current?.goTo(markId)}
      canWrite={state.canWrite}
      handIn={
        isPreview
          ? () => Promise.resolve(PREVIEW_HAND_IN)
          : (client?.handIn ?? (() => Promise.resolve({ kind: "unreached" })))
      }
      onHandedIn={() => refresh()}
    />
  );
  const isPreparing = state.word !== "opening" && needsPreparation(view, state, isBegun);

  return (
    <div className="page-wide">
      <BenchHeader
        view={view}
        homeHref={isPreview ? `/exercises/${view.exerciseId}/preview` : "/my-stones"}
        clockAheadMs={clockAheadMs}
        timeLeft={leftMs === null ? null : <TimeLeft leftMs={leftMs} wholeMs={wholeMs} />}
        onPreparation={isPreparing || view.rules.preparation === "off" ? null : preparation.open}
      />
      <h2 className="visually-hidden">{isPreparing ? "Preparation" : "Plot"}</h2>
      {isPreparing && card}
      {!isPreparing && state.word === "opening" && <div className={classes.opening} aria-hidden="true" />}
      {!isPreparing && state.word !== "opening" && (
        <PlotEditor
          key={state.generation}
          handle={editor}
          mode="bench"
          cut={view.stone.cut}
          proportions={view.stone.proportions}
          characteristics={view.characteristics}
          initialMarks={sitting.plot.marks}
          readOnly={!state.canWrite}
          nowMs={clock.sinceOpenedMs}
          onChange={({ put, removed }) =>
            client?.record({ kind: "marks", put: [...put], removed: [...removed] })
          }
          toolBarEnd={
            <div className={classes.end}>
              {isPreview ? <span>Not saved: preview</span> : <SaveStatus word={state.word} />}
              <div className={classes.inBar}>{handIn}</div>
            </div>
          }
        />
      )}
      {!isPreparing && state.word !== "opening" && (
        <GradesPanel
          grades={sitting.plot.grades}
          scales={view.scales}
          canWrite={state.canWrite}
          onGrade={(property, grade) => client?.record({ kind: "grade", property, grade })}
        />
      )}
      {!isPreparing && state.word !== "opening" && <div className={classes.atEnd}>{handIn}</div>}
      <div className={classes.dock}>
        <SaveNotice saving={saving} />
        {!isPreview && <BenchNotes sittingId={view.sittingId} onCautions={preparation.open} />}
        {burst !== null && burst.dots[0] !== dismissed && (
          <DottingNote
            count={burst.dots.length}
            onCautions={preparation.open}
            onDismiss={() => setDismissed(burst.dots[0] ?? null)}
          />
        )}
      </div>
      <Modal
        opened={preparationShown}
        onClose={preparation.close}
        size="64rem"
        title="Preparation"
        closeButtonProps={{ "aria-label": "Close" }}
      >
        {card}
      </Modal>
    </div>
  );
}
