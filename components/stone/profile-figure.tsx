import classes from "@/components/stone/stone-figures.module.css";
import { drawProfile } from "@/lib/gem/draw-profile";
import type { Solid } from "@/lib/gem/solid";
import { toSvgPath } from "@/lib/gem/to-svg";

/** The stone from the side, as it is seen from 6 o'clock, with a scale of its heights. */
export function ProfileFigure({ solid }: { solid: Solid }) {
  const { outline, edges, levels } = drawProfile(solid);
  const xs = outline.map(([x]) => x);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const { table, girdleTop, girdleBottom, lowest } = levels;
  const scaleX = right + 0.07;
  const box = `${left - 0.06} ${-table - 0.05} ${right - left + 0.22} ${table - lowest + 0.1}`;
  return (
    <svg viewBox={box} className={classes.profile} role="img" aria-label="Profile, seen from 6 o'clock">
      <path className={classes.girdle} d={toSvgPath(outline, true)} />
      <path className={classes.edges} d={edges.map((edge) => toSvgPath(edge, false)).join("")} />
      <path
        className={classes.scale}
        d={`M${scaleX} ${-table}V${-lowest}${[table, girdleTop, girdleBottom, lowest]
          .map((level) => `M${scaleX - 0.02} ${-level}h0.04`)
          .join("")}`}
      />
    </svg>
  );
}
