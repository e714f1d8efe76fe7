import classes from "@/components/debrief/debrief-figure.module.css";
import type { LayerItem, LayerLink, OverlayLayer } from "@/components/plot-editor/plot-editor-props";
import { getMiddle } from "@/lib/editor/measure-shape";
import type { Solid } from "@/lib/gem/build-solid";
import { drawView } from "@/lib/gem/draw-view";
import { VIEWS, type View } from "@/lib/gem/point";
import { toSvgPath } from "@/lib/gem/to-svg";
import { DEFAULT_NOTATION, DIAGRAM_INKS } from "@/lib/plot/notation";

const CALLOUT_REACH = 0.075;

/** Rounded far below a hair's breadth, so that server and browser write the same text. */
const round = (value: number) => Math.round(value * 1e4) / 1e4 + 0;

function DotSign({ item }: { item: LayerItem & { shape: { kind: "dot" } } }) {
  const style = DEFAULT_NOTATION[item.style];
  const [x, y] = [round(item.shape.at[0]), round(-item.shape.at[1])];
  const ink = style.inks.light;
  if (item.discRadius !== undefined) {
    return (
      <circle
        cx={x}
        cy={y}
        r={round(item.discRadius)}
        stroke={ink}
        strokeWidth="0.002"
        fill={ink}
        fillOpacity="0.2"
      />
    );
  }
  if (style.dot === "cross") {
    return (
      <path
        d="M-0.012 -0.012L0.012 0.012M0.012 -0.012L-0.012 0.012"
        transform={`translate(${x} ${y})`}
        stroke={ink}
        strokeWidth="0.006"
      />
    );
  }
  if (style.dot === "square") {
    return (
      <rect
        x={round(x - 0.011)}
        y={round(y - 0.011)}
        width="0.022"
        height="0.022"
        stroke={ink}
        strokeWidth="0.006"
        fill="none"
      />
    );
  }
  return (
    <circle
      cx={x}
      cy={y}
      r="0.011"
      stroke={ink}
      strokeWidth="0.006"
      fill={style.dot === "filled" ? ink : "none"}
    />
  );
}

function ItemLine({ item }: { item: LayerItem }) {
  const style = DEFAULT_NOTATION[item.style];
  if (item.shape.kind === "dot") return <DotSign item={{ ...item, shape: item.shape }} />;
  return (
    <path
      d={toSvgPath(item.shape.points, item.shape.kind === "outline")}
      fill="none"
      stroke={style.inks.light}
      strokeWidth={round(0.0035 * style.widthPx)}
      strokeDasharray={style.dashPx.map((px) => round(px * 0.0025)).join(" ") || undefined}
      strokeLinejoin="round"
    />
  );
}

/** The number stands outwards of the mark, with a line to it. */
function ItemCallout({ item }: { item: LayerItem }) {
  if (item.callout === null) return null;
  const [x, y] = getMiddle(item.shape).map(round) as [number, number];
  const radius = Math.hypot(x, y);
  const [ux, uy] = radius < 0.02 ? [Math.SQRT1_2, Math.SQRT1_2] : [x / radius, y / radius];
  const [cx, cy] = [round(x + ux * CALLOUT_REACH), round(y + uy * CALLOUT_REACH)];
  const ink = DEFAULT_NOTATION[item.style].inks.light;
  return (
    <g>
      <path d={`M${x} ${-y}L${cx} ${-cy}`} stroke={ink} strokeWidth="0.003" />
      <circle cx={cx} cy={-cy} r="0.024" fill="#fff" stroke={ink} strokeWidth="0.004" />
      <text x={cx} y={round(0.0105 - cy)} textAnchor="middle" fontSize="0.03" fontWeight="600" fill={ink}>
        {item.callout}
      </text>
    </g>
  );
}

interface FigureViewProps {
  solid: Solid;
  view: View;
  items: readonly LayerItem[];
  links: readonly LayerLink[];
}

function FigureView({ solid, view, items, links }: FigureViewProps) {
  const { outline, edges } = drawView(solid, view);
  const reach = round(Math.max(...outline.map(([x, y]) => Math.max(Math.abs(x), Math.abs(y)))) * 1.14);
  return (
    <div>
      <svg viewBox={`${-reach} ${-reach} ${2 * reach} ${2 * reach}`} fill="none" aria-hidden="true">
        <path
          d={edges.map((edge) => toSvgPath(edge, false)).join("")}
          stroke={DIAGRAM_INKS.facet.light}
          strokeWidth="0.0025"
        />
        <path d={toSvgPath(outline, true)} stroke={DIAGRAM_INKS.girdle.light} strokeWidth="0.005" />
        {links.map(({ key, from, to, style }) => (
          <path
            key={key}
            d={toSvgPath([from, to], false)}
            stroke={DEFAULT_NOTATION[style].inks.light}
            strokeWidth="0.0025"
            strokeDasharray="0.005 0.0075"
          />
        ))}
        {items.map((item) => (
          <ItemLine key={item.key} item={item} />
        ))}
        {items.map((item) => (
          <ItemCallout key={item.key} item={item} />
        ))}
      </svg>
      <p className={classes.caption}>{view === "crown" ? "Crown" : "Pavilion"}</p>
    </div>
  );
}

/** Both views with their overlays as plain vectors: what is printed in place of the live diagram. */
export function DebriefFigure({ solid, layers }: { solid: Solid; layers: readonly OverlayLayer[] }) {
  const shown = layers.filter(({ isShown }) => isShown !== false);
  const items = shown.flatMap((layer) => layer.items);
  const links = shown.flatMap((layer) => layer.links ?? []);
  return (
    <figure className={classes.root}>
      {VIEWS.map((view) => (
        <FigureView
          key={view}
          solid={solid}
          view={view}
          items={items.filter((item) => item.view === view)}
          links={links.filter((link) => link.view === view)}
        />
      ))}
    </figure>
  );
}
