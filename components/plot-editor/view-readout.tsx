"use client";

import { memo } from "react";
import { type Editor, useEditorState } from "@/components/plot-editor/use-editor";
import classes from "@/components/plot-editor/view-panel.module.css";
import { toClockText } from "@/lib/editor/clock-place";
import type { Solid } from "@/lib/gem/build-solid";
import { locatePoint } from "@/lib/gem/locate-point";
import type { View } from "@/lib/gem/point";

interface ViewReadoutProps {
  readonly editor: Editor;
  readonly solid: Solid;
  readonly view: View;
}

/** Clock position, distance from the centre and facet under the pointer. */
export const ViewReadout = memo(function ViewReadout({ editor, solid, view }: ViewReadoutProps) {
  const at = useEditorState(editor, (state) => (state.pointer?.view === view ? state.pointer.at : null));
  const place = at === null ? null : locatePoint(solid, view, at);
  const isOutside = place?.zone === "outside";
  return (
    <dl className={classes.readout} data-idle={place === null || undefined} data-testid={`readout-${view}`}>
      <div>
        <dt>Clock</dt>
        <dd>{place === null ? "–" : toClockText(place.clockDeg)}</dd>
      </div>
      <div>
        <dt>From centre</dt>
        <dd>{place === null ? "–" : `${Math.round(place.radiusShare * 100)}%`}</dd>
      </div>
      <div className={classes.facet}>
        <dt>Facet</dt>
        <dd>{place === null ? "–" : isOutside ? "outside the girdle" : (place.facetName ?? place.zone)}</dd>
      </div>
    </dl>
  );
});
