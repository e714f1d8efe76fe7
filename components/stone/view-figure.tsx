import type { ReactNode } from "react";
import classes from "@/components/stone/stone-figures.module.css";
import { drawView } from "@/lib/gem/draw-view";
import { fromClockDeg, type View } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";
import { toSvgPath } from "@/lib/gem/to-svg";

export interface ViewFigureProps {
  solid: Solid;
  view: View;
  prongsDeg?: readonly number[];
  /** Drawn over the facets, in the view's frame with y pointing down. */
  children?: ReactNode;
  label?: string;
}

/** How far a view reaches from its centre, with room for prongs and the sign of 12 o'clock. */
export function getViewReach(solid: Solid): number {
  return 1.16 * Math.max(...solid.outline.map(([x, y]) => Math.max(Math.abs(x), Math.abs(y))));
}

/** The distance of the girdle along a clock position: the outermost outline point within 6 degrees of it. */
function getRimRadius(solid: Solid, view: View, clockDeg: number): number {
  const [dx, dy] = fromClockDeg(view, clockDeg, 1);
  const along = drawView(solid, view).outline.map(([x, y]) => ({
    reach: x * dx + y * dy,
    aside: Math.abs(x * dy - y * dx),
  }));
  const near = along.filter(({ reach, aside }) => reach > 0 && aside < 0.05);
  return near.length === 0 ? 0.5 : Math.max(...near.map(({ reach }) => reach));
}

function Prong({ solid, view, clockDeg }: { solid: Solid; view: View; clockDeg: number }) {
  const rim = getRimRadius(solid, view, clockDeg);
  const [x1, y1] = fromClockDeg(view, clockDeg, rim - 0.035);
  const [x2, y2] = fromClockDeg(view, clockDeg, rim + 0.055);
  return <line className={classes.prong} x1={x1} y1={-y1} x2={x2} y2={-y2} />;
}

/** One view of a solid: its facets within the girdle, 12 o'clock marked, prongs where there are any. */
export function ViewFigure({ solid, view, prongsDeg = [], children, label }: ViewFigureProps) {
  const { outline, edges } = drawView(solid, view);
  const reach = getViewReach(solid);
  const top = Math.max(...outline.map(([, y]) => y));
  return (
    <svg
      viewBox={`${-reach} ${-reach} ${2 * reach} ${2 * reach}`}
      className={classes.figure}
      role="img"
      aria-label={label ?? (view === "crown" ? "Crown view" : "Pavilion view")}
    >
      <path className={classes.girdle} d={toSvgPath(outline, true)} />
      <path className={classes.edges} d={edges.map((edge) => toSvgPath(edge, false)).join("")} />
      <path className={classes.twelve} d={`M0 ${-top - 0.02}l-0.02 -0.045h0.04z`} />
      {prongsDeg.map((clockDeg) => (
        <Prong key={clockDeg} solid={solid} view={view} clockDeg={clockDeg} />
      ))}
      {children}
    </svg>
  );
}
