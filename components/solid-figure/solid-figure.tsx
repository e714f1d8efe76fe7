"use client";

import { Button } from "@mantine/core";
import { useId, useMemo } from "react";
import { MarkSign } from "@/components/plot-editor/mark-sign";
import { placeSolidMarks, type SolidMarkSource } from "@/components/solid-figure/place-solid-marks";
import { SolidDrawing } from "@/components/solid-figure/solid-drawing";
import classes from "@/components/solid-figure/solid-figure.module.css";
import { HOLDS, toRotationWords } from "@/components/solid-figure/turn-solid";
import { useTurning } from "@/components/solid-figure/use-turning";
import type { Solid } from "@/lib/gem/solid";
import { DEFAULT_NOTATION } from "@/lib/plot/notation";

export interface SolidFigureProps {
  solid: Solid;
  refractiveIndex: number;
  /** What is in the stone; pass the same list each time. */
  sources: readonly SolidMarkSource[];
}

const toCount = (count: number, what: string) => `${count === 1 ? "One mark" : `${count} marks`} ${what}`;

function listLeftOut(withoutDepth: number, outside: number): string {
  const left = [
    ...(withoutDepth > 0 ? [`${toCount(withoutDepth, "inside without a depth")}`] : []),
    ...(outside > 0 ? [`${toCount(outside, "outside this girdle")}`] : []),
  ];
  return left.length === 0 ? "" : `Not drawn: ${left.join(", ").toLowerCase()}.`;
}

/**
 * A small solid that turns under the pointer and by the arrow keys, with marks at their depth and a thin line from
 * each to the place where it is seen. Nothing in it moves by itself.
 */
export function SolidFigure({ solid, refractiveIndex, sources }: SolidFigureProps) {
  const { rotation, turnTo, handlers } = useTurning();
  const helpId = useId();
  const { marks, withoutDepth, outside } = useMemo(
    () => placeSolidMarks(solid, sources, refractiveIndex),
    [solid, sources, refractiveIndex],
  );
  const name =
    marks.length === 0 ? "Solid" : `Solid, ${toCount(marks.length, "at their depth").toLowerCase()}`;
  const leftOut = listLeftOut(withoutDepth, outside);
  return (
    <figure className={classes.root}>
      <div
        className={classes.stage}
        role="application"
        aria-roledescription="figure that turns"
        aria-label={name}
        aria-describedby={helpId}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys turn it.
        tabIndex={0}
        {...handlers}
      >
        <SolidDrawing solid={solid} marks={marks} rotation={rotation} />
      </div>
      <p id={helpId} className="visually-hidden">
        Arrow keys turn the stone; Home holds it as at first.
      </p>
      <figcaption className={classes.caption}>
        <span aria-live="polite" data-testid="how-held">
          {toRotationWords(rotation)}
        </span>
      </figcaption>
      <fieldset className={classes.holds}>
        <legend className="visually-hidden">Hold the solid</legend>
        {HOLDS.map(({ label, rotation: to }) => (
          <Button key={label} size="compact-sm" variant="default" onClick={() => turnTo(to)}>
            {label}
          </Button>
        ))}
      </fieldset>
      {marks.length > 0 && (
        <ul className={classes.key}>
          {marks.map(({ key, style, callout, words }) => (
            <li key={key}>
              <MarkSign style={DEFAULT_NOTATION[style]} {...(callout === null ? {} : { text: callout })} />
              <span>{words}</span>
            </li>
          ))}
        </ul>
      )}
      {leftOut !== "" && <p className={classes.caption}>{leftOut}</p>}
    </figure>
  );
}
