/** A view of a stone as vectors on paper, with whatever is laid over it. */
import { Circle, G, Line, Path, Rect, Svg, Text } from "@react-pdf/renderer";
import { PAPER_FONTS } from "@/components/paper/register-fonts";
import type { DrawnItem, DrawnLink } from "@/components/plot-canvas/drawn-item";
import { layoutCallouts } from "@/components/plot-canvas/layout-callouts";
import { drawView } from "@/lib/gem/draw-view";
import { fromClockDeg, type Point, type View } from "@/lib/gem/point";
import type { Solid } from "@/lib/gem/solid";
import { DEFAULT_NOTATION, DIAGRAM_INKS } from "@/lib/plot/notation";

/** The drawing's own units along a side, as a screen would have pixels. */
const SIDE = 460;
/** Room round the girdle for the clock. */
const ROOM = 1.17;

export interface PaperViewProps {
  solid: Solid;
  view: View;
  /** How far the larger of the two views reaches, girdle widths; the same for both, so that both are to one scale. */
  reach: number;
  /** Of the square that it fills, points. */
  size: number;
  items?: readonly DrawnItem[];
  links?: readonly DrawnLink[];
  hasClock?: boolean;
}

/** How far a stone reaches from its centre, girdle widths. */
export function getPaperReach(solid: Solid): number {
  return ROOM * Math.max(...solid.outline.flatMap(([x, y]) => [Math.abs(x), Math.abs(y)]));
}

const round = (value: number) => Math.round(value * 100) / 100;
const toPath = (points: readonly Point[], isClosed: boolean) =>
  `${points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${round(x)} ${round(y)}`).join("")}${isClosed ? "Z" : ""}`;

function Item({ item, toPx }: { item: DrawnItem; toPx: (point: Point) => Point }) {
  const { inks, dashPx, widthPx, dot } = DEFAULT_NOTATION[item.style];
  const stroke = inks.light;
  const strokeWidth = item.side === "reference" ? widthPx * 1.2 : widthPx * 0.8;
  if (item.shape.kind !== "dot") {
    return (
      <Path
        d={toPath(item.shape.points.map(toPx), item.shape.kind === "outline")}
        stroke={stroke}
        strokeWidth={strokeWidth}
        fill="none"
        {...(dashPx.length > 0 ? { strokeDasharray: dashPx.join(" ") } : {})}
      />
    );
  }
  const [x, y] = toPx(item.shape.at);
  if (dot === "cross") {
    const d = `M${round(x - 4)} ${round(y - 4)}L${round(x + 4)} ${round(y + 4)}M${round(x + 4)} ${round(y - 4)}L${round(x - 4)} ${round(y + 4)}`;
    return <Path d={d} stroke={stroke} strokeWidth={1.8} fill="none" />;
  }
  if (dot === "square") {
    return <Rect x={x - 4} y={y - 4} width={8} height={8} stroke={stroke} strokeWidth={1.8} fill="none" />;
  }
  return (
    <Circle
      cx={x}
      cy={y}
      r={3.6}
      stroke={stroke}
      strokeWidth={1.8}
      fill={dot === "filled" ? stroke : "none"}
    />
  );
}

function Clock({ solid, view, toPx }: { solid: Solid; view: View; toPx: (point: Point) => Point }) {
  const { outline } = drawView(solid, view);
  return (
    <G>
      {Array.from({ length: 12 }, (_, i) => i + 1).map((hour) => {
        const [dx, dy] = fromClockDeg(view, hour * 30, 1);
        const rim = Math.max(...outline.map(([x, y]) => x * dx + y * dy));
        const [x, y] = toPx([dx * (rim + 0.05), dy * (rim + 0.05)]);
        return (
          <Text
            key={hour}
            x={round(x)}
            y={round(y + 5)}
            textAnchor="middle"
            fill={DIAGRAM_INKS.clock.light}
            style={{ fontSize: 14, fontFamily: PAPER_FONTS[0] as string }}
          >
            {String(hour)}
          </Text>
        );
      })}
    </G>
  );
}

/** One view: facets, girdle, clock, marks, and the numbers of the marks. */
export function PaperView(props: PaperViewProps) {
  const { solid, view, reach, size, items = [], links = [], hasClock = true } = props;
  const { outline, edges } = drawView(solid, view);
  const scale = SIDE / (2 * reach);
  const toPx = ([x, y]: Point): Point => [SIDE / 2 + x * scale, SIDE / 2 - y * scale];
  const callouts = layoutCallouts(items, toPx, [SIDE / 2, SIDE / 2], SIDE);
  return (
    <Svg width={size} height={size} viewBox={`0 0 ${SIDE} ${SIDE}`}>
      <Path
        d={edges.map((edge) => toPath(edge.map(toPx), false)).join("")}
        stroke={DIAGRAM_INKS.facet.light}
        strokeWidth={1}
        fill="none"
      />
      <Path
        d={toPath(outline.map(toPx), true)}
        stroke={DIAGRAM_INKS.girdle.light}
        strokeWidth={1.8}
        fill="none"
      />
      {hasClock && <Clock solid={solid} view={view} toPx={toPx} />}
      {links.map(({ key, from, to, style }) => {
        const [[x1, y1], [x2, y2]] = [toPx(from), toPx(to)];
        const stroke = DEFAULT_NOTATION[style].inks.light;
        return (
          <Line
            key={key}
            x1={x1}
            y1={y1}
            x2={x2}
            y2={y2}
            stroke={stroke}
            strokeWidth={1}
            strokeDasharray="2 3"
          />
        );
      })}
      {items.map((item) => (
        <Item key={item.key} item={item} toPx={toPx} />
      ))}
      {callouts.map(({ item, text, at, anchor }) => {
        const ink = DEFAULT_NOTATION[item.style].inks.light;
        return (
          <G key={item.key}>
            <Line x1={anchor[0]} y1={anchor[1]} x2={at[0]} y2={at[1]} stroke={ink} strokeWidth={0.8} />
            <Circle cx={at[0]} cy={at[1]} r={9} stroke={ink} strokeWidth={1.2} fill="#ffffff" />
            <Text
              x={at[0]}
              y={at[1] + 4}
              textAnchor="middle"
              fill={ink}
              style={{ fontSize: 11, fontWeight: 700, fontFamily: PAPER_FONTS[0] as string }}
            >
              {text}
            </Text>
          </G>
        );
      })}
    </Svg>
  );
}
