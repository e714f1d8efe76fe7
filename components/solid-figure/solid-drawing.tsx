import type { CSSProperties } from "react";
import { layoutCallouts, type PlacedCallout } from "@/components/plot-canvas/layout-callouts";
import type { ToPx } from "@/components/plot-canvas/paint-stone";
import type { SolidMark } from "@/components/solid-figure/place-solid-marks";
import classes from "@/components/solid-figure/solid-figure.module.css";
import { toShape } from "@/lib/editor/drawn-mark";
import type { Point } from "@/lib/gem/point";
import { type ProjectedEdge, projectSolid, projectVec3, type Rotation } from "@/lib/gem/project-solid";
import type { Solid } from "@/lib/gem/solid";
import { getLengthVec3 } from "@/lib/gem/vec3";
import { DEFAULT_NOTATION, type MarkStyle } from "@/lib/plot/notation";

/** The drawing's own square, in its own px: it is scaled to the width that it is given. */
const SIZE = 360;
const MARGIN = 26;

/** Rounded far below a hair's breadth, so that server and browser write the same text. */
const round = (value: number) => Math.round(value * 100) / 100 + 0;

const toPath = (points: readonly Point[], isClosed: boolean) =>
  points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${x} ${y}`).join("") + (isClosed ? "Z" : "");

const toInks = ({ inks }: MarkStyle) =>
  ({ "--ink-light": inks.light, "--ink-dark": inks.dark }) as CSSProperties;

/** From places as they are seen to the drawing's px; the stone fits whichever way it is turned. */
function createToPx(solid: Solid): ToPx {
  const reach = Math.max(...solid.vertices.map(getLengthVec3));
  const scale = (SIZE / 2 - MARGIN) / reach;
  return ([x, y]) => [round(SIZE / 2 + x * scale), round(SIZE / 2 - y * scale)];
}

function Edges({ edges, toPx }: { edges: readonly ProjectedEdge[]; toPx: ToPx }) {
  const draw = (accepts: (edge: ProjectedEdge) => boolean) =>
    edges
      .filter(accepts)
      .map(({ from, to }) => toPath([toPx(from.at), toPx(to.at)], false))
      .join("");
  return (
    <>
      <path className={classes.hidden} d={draw(({ isFront }) => !isFront)} />
      <path className={classes.front} d={draw(({ isFront, isSilhouette }) => isFront && !isSilhouette)} />
      <path className={classes.rim} d={draw(({ isSilhouette }) => isSilhouette)} />
    </>
  );
}

function DotSign({ style, at: [x, y] }: { style: MarkStyle; at: Point }) {
  if (style.dot === "cross") return <path d={`M${x - 4} ${y - 4}l8 8m0 -8l-8 8`} />;
  if (style.dot === "square") return <rect x={x - 4} y={y - 4} width="8" height="8" />;
  return <circle cx={x} cy={y} r="4" className={style.dot === "filled" ? classes.filled : undefined} />;
}

interface SeenMark {
  readonly mark: SolidMark;
  readonly points: readonly Point[];
  readonly sight: readonly Point[] | null;
}

function MarkDrawing({ seen: { mark, points, sight }, toPx }: { seen: SeenMark; toPx: ToPx }) {
  const style = DEFAULT_NOTATION[mark.style];
  const placed = points.map(toPx);
  const [first] = placed;
  return (
    <g className={classes.mark} style={toInks(style)}>
      {sight !== null && <path className={classes.sight} d={toPath(sight.map(toPx), false)} />}
      {mark.kind === "dot" && first !== undefined ? (
        <DotSign style={style} at={first} />
      ) : (
        <path
          d={toPath(placed, mark.kind === "outline")}
          strokeWidth={style.widthPx}
          strokeDasharray={style.dashPx.join(" ") || undefined}
        />
      )}
    </g>
  );
}

function Callout({ placed: { item, text, at, anchor } }: { placed: PlacedCallout }) {
  return (
    <g className={classes.callout} style={toInks(DEFAULT_NOTATION[item.style])}>
      <path
        d={toPath(
          [anchor, at].map(([x, y]): Point => [round(x), round(y)]),
          false,
        )}
      />
      <circle cx={round(at[0])} cy={round(at[1])} r="9" />
      <text x={round(at[0])} y={round(at[1])} fontSize={text.length > 2 ? 8 : 11}>
        {text}
      </text>
    </g>
  );
}

export interface SolidDrawingProps {
  solid: Solid;
  marks: readonly SolidMark[];
  rotation: Rotation;
}

/** A solid as a wireframe, as it is held, with its marks within. A picture alone: what stands around it says it. */
export function SolidDrawing({ solid, marks, rotation }: SolidDrawingProps) {
  const toPx = createToPx(solid);
  const seen = marks.map((mark): SeenMark => {
    const toSeen = (points: SolidMark["points"]) => points.map((point) => projectVec3(point, rotation).at);
    return { mark, points: toSeen(mark.points), sight: mark.sight && toSeen(mark.sight) };
  });
  const callouts = layoutCallouts(
    seen.map(({ mark, points }) => ({
      key: mark.key,
      shape: toShape(mark.kind, points),
      style: mark.style,
      callout: mark.callout,
    })),
    toPx,
    toPx([0, 0]),
    SIZE,
  );
  return (
    <svg viewBox={`0 0 ${SIZE} ${SIZE}`} className={classes.drawing} aria-hidden="true">
      <Edges edges={projectSolid(solid, rotation)} toPx={toPx} />
      {seen.map((one) => (
        <MarkDrawing key={one.mark.key} seen={one} toPx={toPx} />
      ))}
      {callouts.map((placed) => (
        <Callout key={placed.item.key} placed={placed} />
      ))}
    </svg>
  );
}
