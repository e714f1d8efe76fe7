"use client";

import { TriangleAlert } from "lucide-react";
import { useEffect, useState } from "react";
import type { SolidMarkSource } from "@/components/solid-figure/place-solid-marks";
import { SolidFigure } from "@/components/solid-figure/solid-figure";
import { listDerivedFigures } from "@/components/stone/list-derived-figures";
import { ProfileFigure } from "@/components/stone/profile-figure";
import classes from "@/components/stone/stone-figures.module.css";
import { ViewFigure } from "@/components/stone/view-figure";
import type { Solid } from "@/lib/gem/solid";

export interface StoneFiguresProps {
  /** Null while the numbers make no stone. */
  solid: Solid | null;
  /** Why they make none. */
  refusal: string | null;
  prongsDeg?: readonly number[];
  measurementsMm?: readonly [number, number, number] | undefined;
  refractiveIndex: number;
  /** The marks of its reference, for the solid. */
  sources: readonly SolidMarkSource[];
}

/** The stone as its numbers make it: both views, the profile and what follows. A refusal keeps the last stone, dimmed. */
export function StoneFigures({
  solid,
  refusal,
  prongsDeg = [],
  measurementsMm,
  refractiveIndex,
  sources,
}: StoneFiguresProps) {
  const [last, setLast] = useState(solid);
  useEffect(() => {
    if (solid !== null) setLast(solid);
  }, [solid]);
  const shown = solid ?? last;
  return (
    <div className={classes.root}>
      <p className={classes.refusal} role="status">
        {solid === null && (
          <>
            <TriangleAlert size={17} aria-hidden="true" />
            <span>
              No stone can be cut to these numbers{refusal === null ? "" : `: ${refusal}`}.
              {last !== null && " The last one that could is shown."}
            </span>
          </>
        )}
      </p>
      {shown !== null && (
        <div className={classes.drawings} data-stale={solid === null}>
          <figure className={classes.view}>
            <ViewFigure solid={shown} view="crown" prongsDeg={prongsDeg} />
            <figcaption>Crown</figcaption>
          </figure>
          <figure className={classes.view}>
            <ViewFigure solid={shown} view="pavilion" prongsDeg={prongsDeg} />
            <figcaption>Pavilion</figcaption>
          </figure>
          <figure className={classes.side}>
            <ProfileFigure solid={shown} />
            <figcaption>Profile from 6 o’clock</figcaption>
          </figure>
          <div className={classes.solid}>
            <h2>The solid</h2>
            <SolidFigure solid={shown} refractiveIndex={refractiveIndex} sources={sources} />
          </div>
          <dl className={classes.list}>
            {listDerivedFigures(shown, measurementsMm).map(({ what, value, remark }) => (
              <div key={what} className={classes.item}>
                <dt>{what}</dt>
                <dd>{value}</dd>
                {remark !== undefined && <dd className={classes.remark}>{remark}</dd>}
              </div>
            ))}
          </dl>
        </div>
      )}
    </div>
  );
}
